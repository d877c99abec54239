import type { UnitName } from '../program.ts';

/** The names that are drawn or worked out in each unit; the rest are plain numbers and texts. */
const namesByUnit: Readonly<Partial<Record<UnitName, string>>> = {
  m: `
    ship.LOA ship.LBP ship.L_wL ship.B ship.T ship.D_m ship.d wind.h_w wind.h_S wind.h_H load.s_p
    load.s_n moor.fenders.x_f moor.lines.x_c moor.lines.y_c moor.lines.z_c moor.lines.x_b moor.lines.y_b
    moor.lines.z_b moor.lines.L_t moor.lines.l_h moor.lines.L moor.lines.J moor.v moor.u
    moor.lost.v_i moor.lost.u_i moor.l_c moor.b_l bolt.h bolt.a bolt.e_p bolt.bolts.b_r bolt.places.x_k bolt.places.y_k bolt.r_m bolt.s_min bolt.b_m moor.lim_x moor.lim_y moor.x_m moor.y_m moor.x_l moor.y_l bolt.bolts.y bolt.bolts.z bolt.y_m rope.l rope.f_g rope.d_h rope.l_d rope.L_d
    rope.L_p rope.c rope.L_c
  `,
  t: `
    ship.Δ ship.Δ_f
  `,
  'm²': `
    ship.A_Ls ship.A_Ts ship.A_Lh ship.A_Ln ship.A_Th ship.A_L ship.A_T ship.A_Tb wind.A_Cn wind.A_S wind.A_H current.S current.A_Tpp
    current.A_p bolt.I_c bolt.I_t bolt.I_x bolt.I_s
  `,
  'm³': `
    ship.V_d
  `,
  'kg/m³': `
    ship.ρ_w wind.ρ_a wind.ρ_n
  `,
  'm²/s': `
    ship.ν
  `,
  'm/s²': `
    ship.g_n
  `,
  kn: `
    wind.V_h wind.V_m wind.V_10 current.V_c current.V_m load.V_p load.V_cr
  `,
  'm/s': `
    wind.V_w
  `,
  s: `
    wind.t_1 wind.t_2
  `,
  deg: `
    wind.θ_w current.g_m wind.from.a wind.from.g_i wind.g_0 wind.g_m current.from.a load.each.a_w load.each.a_c load.θ_k load.θ_v moor.cases.a_w moor.cases.a_c moor.w_F moor.c_F moor.lines.w_e moor.lines.c_e moor.w_w moor.c_w bollard.bollards.w_b bollard.bollards.v_b bollard.w_R bollard.v_R wind.θ_r wind.θ_x wind.φ_x wind.ocimf.a_w current.θ_c current.θ_r current.ocimf.a_c
    moor.lim_τ moor.lim_b moor.lim_s moor.τ_max moor.δ_b moor.δ_s moor.lines.α moor.lines.τ
    bollard.t_lim bollard.τ_bm bollard.bollards.β bollard.bollards.τ_b bolt.t rope.τ_p
  `,
  kPa: `
    wind.q wind.q_o current.q current.q_o
  `,
  'kN/m³': `
    wind.γ_a wind.γ_n
  `,
  kN: `
    wind.F_X wind.F_Y wind.F_A wind.F_F current.F_X current.F_Y current.F_A current.F_F
    current.F_form current.F_fric current.F_prop load.X_o load.Y_o load.combos.X_k load.combos.Y_k
    load.each.R_k load.each.X_k load.each.Y_k wind.from.F_Xi wind.from.F_Yi current.from.F_Xi current.from.F_Yi load.X load.Y load.P_n load.P_E load.P_E4 load.P_BS load.P_IS load.P_Th
    load.P_OC load.P_OCb moor.lines.MBL_s moor.lines.AE_t moor.lines.MBL_t moor.lines.T_0
    moor.lines.T moor.lines.T_1 moor.lines.T_a moor.lines.T_k moor.lines.T_y moor.lines.T_x
    moor.lines.MBL moor.lines.N_w moor.lines.N_b moor.lines.F_lim moor.lines.AE moor.T_max moor.B
    moor.F moor.Y_l moor.X_l moor.X_b moor.X_t moor.X_m moor.F_m moor.Y_m moor.Y_on moor.cases.X_c moor.cases.Y_c moor.fenders.R_f moor.fenders.F_f moor.lines.T_e moor.lines.T_f moor.S_y moor.S_x moor.R_y moor.R_x
    moor.Y_A moor.Y_F moor.S_req moor.B_req moor.S_22 moor.B_23 moor.S_av moor.B_av bollard.R_gov
    bollard.R_max bollard.V_max bollard.bollards.R_w bollard.bollards.R bollard.bollards.H
    bollard.bollards.P_x bollard.bollards.P_y bollard.bollards.P_z bollard.bollards.M_1
    bollard.bollards.R_1 bolt.P bolt.T bolt.H bolt.V bolt.F_t bolt.F_v bolt.S_t bolt.S_s bolt.N_s bolt.V_s bolt.C_t
    bolt.bolts.T_c bolt.bolts.T_t bolt.F_vR bolt.F_tR bolt.N_R bolt.V_R rope.MBL_1 rope.SWL_1
    rope.F_line rope.F_br rope.F_fit rope.F_ship rope.F_weak rope.H_p rope.V_p rope.V_q rope.T_q rope.T_p rope.T_c0 rope.T_c
    rope.T_h rope.T_l rope.T_3 rope.T_2
  `,
  kN·m: `
    wind.M current.M load.M_o load.M load.combos.M_k load.each.M_k wind.from.M_i current.from.M_i moor.cases.M_c moor.C moor.M_l bolt.M_b bolt.M_c bolt.M_t
  `,
  'kN/m': `
    moor.fenders.k_f load.p_n load.t_n moor.lines.k moor.lines.k_x moor.A moor.D moor.E moor.K_x rope.w
  `,
  tf: `
    bollard.bollards.rate bollard.bollards.s_w
  `,
  mm: `
    moor.lines.d_r bolt.d bolt.t_p bolt.p_th bolt.o_p
  `,
  'mm²': `
    bolt.A_b bolt.A_s
  `,
  MPa: `
    bolt.f_ub bolt.f_yb bolt.F_nt bolt.F_nv bolt.f_v bolt.f_t bolt.f_p bolt.f_ta bolt.F'_nt
  `,
  '%': `
    moor.ε_min moor.ε_max moor.p_lost bollard.p_br bollard.p_n rope.lim_1
  `,
  rad: `
    moor.r moor.lost.r_i
  `,
  'kg/m': `
    rope.w_m
  `,
};

/** The unit of every number, by name. */
export const units: Readonly<Record<string, UnitName>> = Object.fromEntries(
  Object.entries(namesByUnit).flatMap(([unit, names]) =>
    names
      .trim()
      .split(/\s+/)
      .map((name): [string, UnitName] => [name, unit as UnitName]),
  ),
);
