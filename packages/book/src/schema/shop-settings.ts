/**
 * Numbers that the shop decides once. Each has a default so that a book without a shop still gives results;
 * the defaults are habits of the trade: common practice, no source, unless the row says more.
 */
export interface ShopSetting {
  readonly value: number;
  readonly about: string;
  readonly source: string;
}

const habit = "common practice, no source";

export const SHOP_SETTINGS = {
  breakout_min: { value: 0.9, about: "Minutes to form, peg and tie one breakout.", source: habit },
  breakout_branches: {
    value: 4,
    about:
      "Branches that one breakout lets go beside the one that goes on; more at one place count as further breakouts.",
    source: habit,
  },
  tie_min: { value: 0.25, about: "Minutes for one tie.", source: habit },
  insertion_min: { value: 0.15, about: "Minutes to load one contact and tug it.", source: habit },
  splice_min: { value: 2.0, about: "Minutes for one splice.", source: habit },
  double_crimp_min: { value: 0.3, about: "Extra minutes for two wires in one contact.", source: habit },
  cut_min: { value: 0.12, about: "Minutes to cut, strip and crimp one wire.", source: habit },
  reel_change_min: { value: 0.8, about: "Minutes to change the reel on the cutting bench.", source: habit },
  lay_wire_m_min: {
    value: 0.08,
    about: "Minutes to pull and lay one metre of wire; the price of a metre in routing.",
    source: habit,
  },
  tie_spacing_mm: { value: 75, about: "Distance between ties that routing counts with.", source: habit },
  tail_max_mm: { value: 180, about: "Longest tail from a lane to a point.", source: habit },
  length_step_mm: { value: 5, about: "Branch lengths are rounded up to this step.", source: habit },
  cut_step_mm: { value: 5, about: "Cut lengths are rounded up to this step.", source: habit },
  dressing_mm: { value: 15, about: "Allowance for dressing a wire at each end.", source: habit },
  service_loop_mm: {
    value: 60,
    about: "Loop at a board connector: two re-terminations and room to mate it.",
    source: habit,
  },
  trim_mm: {
    value: 20,
    about: "Cut long by this much at the end that is trimmed at the holder.",
    source: habit,
  },
  laid_factor: {
    value: 1.12,
    about: "A laid bundle's diameter over that of a perfect packing, as the shop measured it.",
    source: habit,
  },
  bend_multiple: {
    value: 3,
    about: "Least bend radius of a bundle, in diameters.",
    source: "SAE AS50881 for wire that is supported at the bend, as reported at second hand",
  },
  hinge_slack_pct: { value: 8, about: "Slack over a hinge beyond the longest pull.", source: habit },
  earth_extra_pct: {
    value: 5,
    about: "The earth wire over a hinge is longer than its neighbours by this.",
    source: habit,
  },
  hand_room_mm: {
    value: 40,
    about: "Room between a housing's holder and the next branch on the pinboard.",
    source: habit,
  },
  board_margin_mm: { value: 60, about: "Margin at the edge of the pinboard.", source: habit },
  splice_strip_mm: { value: 8, about: "Bare conductor of each wire in a splice.", source: habit },
  sheath_strip_mm: { value: 40, about: "Sheath taken off a bought cable at each end.", source: habit },
  splice_gap_mm: {
    value: 50,
    about: "Least distance between two splices, and from a splice to a breakout.",
    source: habit,
  },
  ambient_c: {
    value: 45,
    about: "Air inside the machine in play, beside wires, fuses and coils.",
    source: habit,
  },
  cold_c: {
    value: 10,
    about: "Coldest that wires and windings are when the machine is played.",
    source: habit,
  },
  hot_c: {
    value: 70,
    about: "Hottest that wires get in play; their resistance is that of this.",
    source: habit,
  },
  contact_worn: {
    value: 3,
    about: "Resistance of a contact at the end of its life, in resistances of a new one.",
    source: habit,
  },
  fuse_pulses: {
    value: 100000,
    about: "Pulses that a fuse must outlast.",
    source: "the longest row of a fuse maker's table of pulses",
  },
  strand_lay: {
    value: 1.02,
    about: "Length of the strands of a conductor over the length of the wire: they are laid in a helix.",
    source: habit,
  },
  driver_on_mohm: {
    value: 50,
    about: "Resistance of a driver that is on, in milliohms, where its element gives none.",
    source: habit,
  },
  fuse_drop_mv: {
    value: 100,
    about:
      "Voltage across a fuse at its rated current, in millivolts, where its element gives no resistance.",
    source: habit,
  },
} as const satisfies Readonly<Record<string, ShopSetting>>;

export type ShopSettingName = keyof typeof SHOP_SETTINGS;
export type ShopNumbers = { readonly [N in ShopSettingName]: number };
