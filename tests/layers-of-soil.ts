import type { Cell, Table } from '../src/document/index.ts';

/** A layer of clay and two of sand, whose friction reads the strength of the one and the blow count of the others. */
export function layersOf(strengths: readonly Cell[], blows: readonly Cell[]): Table {
  const soils = ['clay', 'sand', 'sand'];
  return {
    id: 'layers',
    kind: 'table',
    name: 'layers',
    length: soils.length,
    columns: [
      { id: 'soil', kind: 'given', name: 'soil', type: 'text', options: ['clay', 'sand'], chunks: [soils] },
      { id: 's', kind: 'given', name: 's_u', unit: 'kPa', optional: true, chunks: [strengths] },
      { id: 'N', kind: 'given', name: 'N', unit: '-', optional: true, chunks: [blows] },
      {
        id: 'f',
        kind: 'calc',
        name: 'f',
        unit: 'kPa',
        by: 'soil',
        methods: [
          { id: 'm1', for: ['clay'], formula: 's_u/2' },
          { id: 'm2', for: ['sand'], formula: 'N*2 kPa' },
        ],
      },
    ],
  };
}
