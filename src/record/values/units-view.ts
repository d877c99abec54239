/** Units as the book has them, or every quantity in one system. */
export type UnitsView = 'written' | 'SI' | 'US';
