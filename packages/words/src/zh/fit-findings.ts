import type { RuleWords } from "../finding.ts";

const TYPES = {
  wood: { softwood: "软木", hardwood: "硬木", any: "任何面板" },
  hole: { pilot: "导孔", clearance: "通孔" },
} as const;

/** Wording of the rules of how fasteners hold: length, wood, pilot holes, edges, threadlocker, and look-alike screws. */
export const fitFindings: Readonly<Record<string, RuleWords>> = {
  "screw-no-wood": {
    title: "紧固件无处着力",
    says: "{0}（{type}）：{where}，{1}。同类 {count} 个。",
    values: {
      where: {
        outside: "位于面板之外",
        panel: "面板不是木材",
        hole: "螺纹位于孔上",
        pocket: "槽底已无木材",
      },
    },
    why: "紧固件空转，所固定的零件会脱落。",
    todo: "移动紧固件或孔；或配螺母、螺孔；或注明面板的木材种类。",
  },
  "screw-through": {
    title: "螺钉穿透或几乎穿透",
    says: "{0}（{type}）在 {1}：钻入 {reach_mm} mm，{face}在 {wood_mm} mm 处，须留 {margin_mm} mm；{comes}。最长可用 {longest_mm} mm。同类 {count} 个。",
    values: {
      face: { played: "台面", far: "对面", pocket: "槽底" },
      comes: { out: "已穿出", near: "余量不足" },
    },
    why: "穿出的尖端会顶起面层、卡球或划手；余量不足时导孔会钻穿。",
    todo: "改用较短的螺钉，在头下加垫圈或更厚的法兰，或移开凹槽。",
  },
  "screw-short": {
    title: "螺钉咬入木材太浅",
    says: "{0}（{type}）在 {1}：长 {length_mm} mm，其中 {flange_mm} mm 在木材之上；咬合 {engaged_mm} mm，需要 {least_mm} mm。最短可用 {shortest_mm} mm。同类 {count} 个。",
    why: "机器震动时会拔出。",
    todo: "木材允许时改用更长的螺钉，或增加数量；或移到木材更厚处。",
  },
  "screw-edge": {
    title: "螺钉离边缘或孔太近",
    says: "{0}（{type}）：距{side} {1} {distance_mm} mm，需要 {least_mm} mm。同类 {count} 个。",
    values: { side: { outline: "面板边缘", cutout: "开孔边缘" } },
    why: "木材会开裂或崩边，螺钉失去固定力。",
    todo: "移动螺钉，转动所固定的零件，或改用较细的螺钉。",
  },
  "screw-spacing": {
    title: "两颗螺钉太近",
    says: "{0} 与 {1}：相距 {distance_mm} mm，需要 {least_mm} mm。",
    why: "中间的木材会开裂，两颗都固定不住。",
    todo: "移动其中一颗，或改用较细的螺钉。",
  },
  "screw-meets": {
    title: "两个紧固件在板内相碰",
    says: "{0} 与 {1}：相距 {distance_mm} mm，需要 {least_mm} mm；在板厚中重叠 {shared_mm} mm。",
    why: "后拧的会顶到先拧的，或钻破其孔。",
    todo: "移动其中一个，或改用较短的螺钉。",
  },
  "pilot-size": {
    title: "孔径与螺钉不符",
    says: "{0}：{wood}中的{hole}为 {hole_mm} mm；表中允许 {least_mm} 至 {most_mm} mm。共 {count} 个。",
    values: TYPES,
    why: "孔太小，木材开裂、螺钉折断或穿不过去；孔太大则固定不住。",
    todo: "改正该型号的孔径，或留空以采用表中的值。",
  },
  "nut-missing": {
    title: "机螺钉没有可拧入之处",
    says: "{1} 中的 {0}（{type}，{thread}）：既未给出螺母，也未给出螺孔深度。同类 {count} 个。",
    why: "不知道它拧在何处，长度无法核对。",
    todo: "填写螺母，或面板之外螺孔的深度。",
  },
  "nut-thread": {
    title: "螺母与螺钉不配",
    says: "{0}：{type} 为 {thread}，{1} 为 {nut_thread}。同类 {count} 个。",
    why: "两者拧不到一起。",
    todo: "选用相配的螺母或螺钉。",
  },
  "nut-short": {
    title: "螺钉太短，螺母拧不满",
    says: "{0}（{type}），螺母 {1}：长 {length_mm} mm，夹层厚 {stack_mm} mm；咬合 {engaged_mm} mm，需要 {least_mm} mm。最短可用 {shortest_mm} mm。同类 {count} 个。",
    why: "螺母没拧满会滑牙。",
    todo: "改用更长的螺钉或更薄的夹层。",
  },
  "tapped-short": {
    title: "螺钉拧入螺孔太浅",
    says: "{0}（{type}）在 {1}：长 {length_mm} mm，夹层厚 {stack_mm} mm；咬合 {engaged_mm} mm，需要 {least_mm} mm。最短可用 {shortest_mm} mm；螺孔深 {tapped_mm} mm。同类 {count} 个。",
    why: "拧紧时会滑牙。",
    todo: "改用更长的螺钉或更深的螺孔。",
  },
  "tapped-bottom": {
    title: "螺钉顶到孔底",
    says: "{0}（{type}）在 {1}：长 {length_mm} mm，夹层厚 {stack_mm} mm，螺孔深 {tapped_mm} mm。最长可用 {longest_mm} mm。同类 {count} 个。",
    why: "头部尚未压紧就已拧死，或顶穿零件。",
    todo: "改用更短的螺钉，加垫圈，或加深螺孔。",
  },
  "threadlocker-wood": {
    title: "木材中的螺钉涂了螺纹胶",
    says: "{0}：{1} 涂螺纹胶，却拧在木材中。同类 {count} 个。",
    why: "没有金属夹缝胶不会固化，只会使木材打滑。",
    todo: "改用不涂胶的型号。",
  },
  "threadlocker-plastic": {
    title: "塑料旁使用螺纹胶",
    says: "{0}（{type}）涂螺纹胶，固定的 {1} 是塑料件。同类 {count} 个。",
    why: "螺纹胶会使透明件和注塑件开裂，往往几周后才出现。",
    todo: "改用不涂胶的型号，或自锁螺母。",
  },
  "head-through": {
    title: "头部、垫圈或螺母与孔不符",
    says: "{0}（{type}）：{part} {part_mm} mm，孔 {hole_mm} mm，{1}。同类 {count} 个。",
    values: {
      part: {
        head: "头部",
        washer: "垫圈",
        nut: "螺母",
        "in-washer": "垫圈中的头部",
        thread: "垫圈中的螺纹",
      },
    },
    why: "它会滑过孔而固定不住，或者根本装不上。",
    todo: "选用与螺钉和孔相配的垫圈，或减小孔径。",
  },
};
