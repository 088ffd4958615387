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
  screw_far_margin_mm: {
    value: 1,
    about: "Wood that is left between the point of a screw and the far face, or the floor of a pocket.",
    source: habit,
  },
  wood_engagement_diameters: {
    value: 2.5,
    about: "Least length of thread in wood, in diameters of the screw.",
    source: habit,
  },
  thread_engagement_diameters: {
    value: 1,
    about: "Least length of thread in a nut or tapped hole, in diameters of the screw.",
    source: habit,
  },
  screw_edge_diameters: {
    value: 1.5,
    about:
      "Least distance from a screw in wood to an edge, hole or pocket, in its diameters. It is for plywood with pilot holes and light parts; codes for loaded timber joints ask for 4 and more.",
    source: habit,
  },
  screw_spacing_diameters: {
    value: 2.5,
    about:
      "Least distance between two screws in wood, in diameters of the thicker one. It is for plywood with pilot holes and light parts; codes for loaded timber joints ask for 5 and more.",
    source: habit,
  },
  clear_solids_mm: {
    value: 0.5,
    about: "Least distance between two solid things beside each other.",
    source: habit,
  },
  clear_moving_mm: { value: 1, about: "Least distance to anything that moves.", source: habit },
  clear_pose_mm: {
    value: 3,
    about: "Least distance between what stands on different panels, in every pose.",
    source: habit,
  },
  clear_glass_mm: {
    value: 10,
    about: "Least distance between the glass and what stands below it.",
    source: habit,
  },
  clear_board_mm: {
    value: 2,
    about: "Least distance between a board and what lies below it.",
    source: habit,
  },
  ball_gap_mm: {
    value: 1.5,
    about: "A gap this much narrower or wider than the ball can hold it.",
    source: habit,
  },
  ball_pocket_mm: {
    value: 1,
    about: "A ball that would have to climb more than this stays where it is.",
    source: habit,
  },
  clear_ball_mm: { value: 3, about: "Room between a ball and what it runs under.", source: habit },
  service_most_off: {
    value: 4,
    about: "Most things that may have to come off before a fastener can be reached for service.",
    source: habit,
  },
  step_most_fasteners: {
    value: 30,
    about: "Most fasteners in one derived step, so that its card stays readable.",
    source: habit,
  },
  pick_s: {
    value: 2,
    about: "Seconds to pick one fastener and set it on the bit or in its hole.",
    source: habit,
  },
  place_s: {
    value: 6,
    about: "Seconds to pick and place a small part; a mechanism takes three times as long.",
    source: habit,
  },
  start_loose_s: { value: 3, about: "Seconds to start a fastener and leave it loose.", source: habit },
  align_s: {
    value: 8,
    about: "Seconds to align what is held loosely, once for each thing held.",
    source: habit,
  },
  tighten_s: { value: 3, about: "Seconds to drive a fastener home.", source: habit },
  threadlock_s: { value: 4, about: "Seconds to put threadlocker on a thread.", source: habit },
  washer_s: { value: 2, about: "Seconds to put a washer on.", source: habit },
  nut_s: { value: 5, about: "Seconds to set a nut and hold it with a spanner.", source: habit },
  recheck_s: { value: 3, about: "Seconds to check a fastener after burn-in.", source: habit },
  plug_s: { value: 5, about: "Seconds to plug a connector and pull at it.", source: habit },
  solder_s: { value: 12, about: "Seconds to solder or push on one wire at a bare terminal.", source: habit },
  bit_change_s: { value: 6, about: "Seconds to change the bit or the tool.", source: habit },
  box_change_s: {
    value: 3,
    about: "Seconds to put one box of fasteners away and open another.",
    source: habit,
  },
  turn_over_s: {
    value: 60,
    about: "Seconds for two people to turn a panel over on its cradle.",
    source: habit,
  },
  hand_mm_s: {
    value: 400,
    about: "Speed of the hand from hole to hole, in millimetres a second.",
    source: habit,
  },
  gauge_s: { value: 20, about: "Seconds to set and check one gauge on the mechanism bench.", source: habit },
  rest_pct: {
    value: 12,
    about: "Allowance for rest and small delays, on top of the time of the motions.",
    source: habit,
  },
  takt_min: {
    value: 60,
    about: "Takt: the minutes after which the next machine must come off the line.",
    source: habit,
  },
  learning_pct: {
    value: 85,
    about: "Learning: the cumulative average time falls to this when the number built doubles.",
    source: habit,
  },
  symbol_mm: { value: 4, about: "Size of a screw's symbol in print.", source: habit },
  saw_kerf_mm: { value: 3.2, about: "Width of the saw cut.", source: habit },
  saw_stages: { value: 3, about: "Most stages of cutting a sheet: rip, cross, trim.", source: habit },
  offcut_min_mm: {
    value: 250,
    about: "An offcut whose shorter side is at least this is kept.",
    source: habit,
  },
  offcut_share_pct: {
    value: 50,
    about: "What a kept offcut is worth of the price of its area in a new sheet.",
    source: habit,
  },
  fence_setting_min: {
    value: 2.5,
    about: "Minutes to set the fence, cut a test piece and measure it.",
    source: habit,
  },
  saw_cut_s: {
    value: 25,
    about: "Seconds for one cut of a sheet or part, handling included.",
    source: habit,
  },
  panel_finish_min: {
    value: 12,
    about: "Minutes to rout, drill and sand one panel after the saw.",
    source: habit,
  },
  box_min: { value: 45, about: "Minutes to glue, clamp and square one box of panels.", source: habit },
  panel_tolerance_mm: {
    value: 0.5,
    about: "A panel may be this much larger or smaller than its size where it says nothing.",
    source: habit,
  },
  thickness_tolerance_mm: {
    value: 0.2,
    about: "A measured thickness may differ by this over the sheet.",
    source: habit,
  },
  groove_play_mm: {
    value: 0.2,
    about: "A slot or groove is this much wider than the panel that stands in it.",
    source: habit,
  },
  rack_cabinets: { value: 9, about: "Cabinets that the paint rack holds.", source: habit },
  pick_part_s: {
    value: 3,
    about: "Seconds to find and pick a part of a board out of its box; likes one after another take half.",
    source: habit,
  },
  form_part_s: { value: 3, about: "Seconds to bend leads and insert one part.", source: habit },
  hand_joint_s: { value: 3, about: "Seconds to solder one joint by hand.", source: habit },
  clip_joint_s: { value: 1, about: "Seconds to clip one lead.", source: habit },
  hand_setup_min: {
    value: 10,
    about: "Minutes to set up a bench for one kind of board soldered by hand.",
    source: habit,
  },
  bath_setup_min: {
    value: 190,
    about:
      "Minutes to heat, skim, flux and trim the solder bath and to clean up, once a session, of all who work at it.",
    source: habit,
  },
  bath_kind_min: {
    value: 12,
    about: "Minutes to set carriers and try the first board of each kind in a session.",
    source: habit,
  },
  bath_dip_min: {
    value: 1,
    about: "Minutes to flux, preheat and dip one carrier, of all who work at the bath.",
    source: habit,
  },
  bath_mask_s: { value: 12, about: "Seconds to mask and unmask one hole or contact.", source: habit },
  bath_wash_min: { value: 0.6, about: "Minutes to wash and dry one board after the bath.", source: habit },
  bath_touch_up_pct: {
    value: 3,
    about: "Share of the joints that are mended by hand after the bath.",
    source: habit,
  },
  bath_hidden_s: {
    value: 8,
    about: "Seconds to look at one hidden joint after the bath and to mend it from the side.",
    source: habit,
  },
  bath_people: { value: 2, about: "People who work at the solder bath together.", source: habit },
  part_attrition_pct: {
    value: 2,
    about: "Share of small parts that are lost or spoilt in kitting and stuffing.",
    source: habit,
  },
  part_attrition_each: {
    value: 1,
    about: "Least number of extra small parts of a kind in a batch.",
    source: habit,
  },
  scrap_pct: {
    value: 1,
    about: "Share of all other parts that are spoilt, where a part says nothing.",
    source: habit,
  },
  board_test_min: {
    value: 4,
    about: "Minutes to test one board on its jig, where its tests give no time.",
    source: habit,
  },
  labour_rate: {
    value: 30,
    about: "What an hour of one person's work costs, in the shop's currency.",
    source: habit,
  },
  overhead_pct: { value: 25, about: "Rent, power and tools, as a share of the work.", source: habit },
  order_cost: {
    value: 15,
    about: "Cost of placing and receiving one order, in the shop's currency.",
    source: habit,
  },
  order_merge_days: {
    value: 14,
    about: "What one supplier would get within so many days is one order with part deliveries.",
    source: habit,
  },
  holding_pct: {
    value: 20,
    about: "Cost of holding stock for a year, as a share of its value.",
    source: habit,
  },
  work_days: { value: 5, about: "Working days of a week, from Monday on.", source: habit },
  kit_days: { value: 2, about: "Working days before a stage by which its parts are there.", source: habit },
  long_lead_days: {
    value: 30,
    about: "A part whose lead time is longer than this is called out.",
    source: habit,
  },
} as const satisfies Readonly<Record<string, ShopSetting>>;

export type ShopSettingName = keyof typeof SHOP_SETTINGS;
export type ShopNumbers = { readonly [N in ShopSettingName]: number };
