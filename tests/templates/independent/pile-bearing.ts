import { drawPile } from './pile-bearing/draw.ts';
import { workPile } from './pile-bearing/work.ts';
import type { IndependentProgram, UnitName } from './program.ts';

function all(unit: UnitName, sheet: string, names: string): Readonly<Record<string, UnitName>> {
  return Object.fromEntries(names.split(' ').map((name) => [`${sheet}.${name}`, unit]));
}

/**
 * Axial capacity of a driven pile: API RP 2A-WSD 21st ed. 6.4 and RP 2GEO (2011) 8.1, EM 1110-2-2906 and NAVFAC DM 7.02 for
 * the other rules; AASHTO LRFD for drag and fixity, AISC 360 E3 for the column, EN 1993-5 for corrosion.
 */
export const pileBearing: IndependentProgram = {
  template: 'pile-bearing',
  units: {
    ...all('m', 'pile', 'H_a H_q h_B d_over d_sc L_in z_w_in L_fr_in z_n dz z_ign z_c p_in p_c'),
    ...all(
      'm',
      'pile',
      'El_m El_0 d_0 d_w L L_t L_c L_ct L_fr L_p z_w z_h p_o p_i L_wet L_wh z_end z_σ h_s h_c h_fl h_fx z_f z_lq z_e e_t H_w s_x s_y s_g X_g Y_g d_x H_b H_k',
    ),
    ...all('mm', 'pile', 'D t c_i D_i c_z c_o c_s c_x t_e t_min'),
    ...all('m²', 'pile', 'A_b_in A_g A_pl A_r A_dis'),
    ...all('mm²', 'pile', 'A_m_in A_m A_e'),
    ...all('mm⁴', 'pile', 'I_in I_e'),
    ...all('kN/m³', 'pile', 'γ_w γ_st γ_con γ_m γ_B γ_fl'),
    ...all('kN/m', 'pile', 'w w_B'),
    ...all('yr', 'pile', 'life'),
    ...all('kPa', 'pile', "σ_s σ_r σ_d σ_c u_c σ'_c σ_q u_q σ'_q σ'_h s_ut q σ'_m s_m q_xt"),
    ...all(
      'kN',
      'pile',
      'Q_f W W_a W_o Q_r Q_pl Q_o Q_i Q_e Q_ie Q_re Q_se Q_be Q_ge Q_un Q_pg Q_co Q_in Q_nz Q_σ Q_n Q_s Q_b Q_c Q_w Q_t W_pl W_t W_h T_u Q_tu Q_λ Q_gs Q_gt Q_gb Q_gr Q_gu W_g',
    ),
    ...all('m', 'pile.layers', 'h z_a z_t z_b h_w h_a h_r p_l X_l Y_l h_f h_fe'),
    ...all('kN/m³', 'pile.layers', 'γ γ_u γ_h G_s n_f n_fe'),
    ...all('kPa', 'pile.layers', "s_u1 s_u2 f_in q_in f_l_in q_l_in σ'_t σ'_b σ'_n s_1 s_l s_γ q_t f_x q_x"),
    ...all('deg', 'pile.layers', 'φ δ φ_k'),
    ...all('kN', 'pile.layers', 'Q_l B_l'),
    ...all('m', 'pile.slices', 'Δz z_1 z_2 z h_L'),
    ...all('kPa', 'pile.slices', "σ'_v s_u f"),
    ...all('kN/m', 'pile.slices', 'F_o F_t'),
    ...all('m', 'loads', 's_p s_w b_d L_f L_he L_ne L_fe L_e L_ee z_x h_5 h_k h_5e h_ke'),
    ...all('kPa', 'loads', 'w_d q_l s_uf s_fm s_ufe s_fme'),
    ...all('kN/m', 'loads', 'w_b w_c w_s u_s'),
    ...all(
      'kN',
      'loads',
      'N_E N_D N_L N_C N_S N_U N_g R_g T_g R_tg Q_a T_a N_max T_max N_st N_se R_x Q_x Q_d N_x R_w N_w N_gm Q_cn Q_tn Q_gn',
    ),
    ...all(
      'MPa',
      'loads',
      "f_y E_s f'_c f_pe E_c E_cx E_m F_e F_ee F_cr F_cre f_st f_con f_a f_ae f_b f_be σ_a σ_ae σ_t f_ta σ_x",
    ),
    ...all('mm', 'loads', 'r_e'),
    ...all('kN/m³', 'loads', 'n_h n_fm n_he n_fme'),
    ...all('kN', 'loads.combos', 'P P_W P_e N T N_h N_p R W_r W_f R_t N_q T_q'),
    ...all('m', 'depth', 'dz_p L_x z_0 L_n L_m El_n L_o'),
    ...all('m', 'depth.profile', 'z_p El_p L_whp H_p z_s'),
    ...all('kPa', 'depth.profile', "σ'_p s_p q_p"),
    ...all(
      'kN',
      'depth.profile',
      'Q_op Q_np Q_sp Q_ip Q_inp Q_bp Q_tp Q_cp W_p W_ap W_hp W_plp m_c m_t m S_p B_p T_p',
    ),
    ...all('kN', 'depth', 'Q_sL Q_bL Q_tL'),
  },
  draw: drawPile,
  work: workPile,
};
