import type { RuleWords } from "../finding.ts";

/** 电路规则的用语：限流、熔断器、线圈、灯、电源与接地。 */
export const electricFindings: Readonly<Record<string, RuleWords>> = {
  "bond-open": {
    title: "接地连接未接通",
    says: "接地 {0}：{1} 未连到市电插座的接地。",
    why: "金属件可能带电，而没有熔断器断开。",
    todo: "把该接地连到插座的接地。",
  },
  "bond-thin": {
    title: "接地线比要求的细",
    says: "接地 {0}：导线 {1} 为 {wire_type}，{area_mm2} mm²；要求 {asked_type}，{asked_mm2} mm²。",
    why: "它可能在熔断器断开之前熔断，金属件继续带电。以当地法规和持证电工为准。",
    todo: "把该导线换成接地表要求的型号，或更正接地表。",
  },
  "coil-diode-missing": {
    title: "线圈没有二极管",
    says: "{0}：在 {volts} V 下切断 {most_a} A，磁场储能 {stored_mj} mJ；{1} 上没有并联二极管。",
    why: "磁场使电压升高，直到击穿驱动。",
    todo: "在线圈上并联二极管，阴极接供电侧。",
  },
  "coil-diode-small": {
    title: "线圈的二极管太小",
    says: "{0} 的 {1}：峰值 {peak_a} A，平均 {mean_a} A，{volts} V；可承受反复峰值 {rated_peak_a} A，平均 {rated_a} A，{block_v} V。",
    why: "二极管损坏会连带损坏驱动。",
    todo: "换用更大的二极管。",
  },
  "coil-held": {
    title: "线圈保持时间过长",
    says: "{0}：保持 {asked_s} s；绕组在 {hold_s} s 后达到 {limit_c} °C。",
    why: "绕组绝缘迅速老化，骨架软化。",
    todo: "缩短保持时间或降低占空比，或绕成更高的电阻。",
  },
  "coil-hot": {
    title: "激烈游戏时线圈过热",
    says: "{0}：全压占 {duty_pct} %，允许 {allowed_pct} %。{mean_w} W × {rise_k_w} K/W + {ambient_c} °C = {reaches_c} °C；其等级允许 {limit_c} °C。",
    why: "绕组绝缘迅速老化，骨架软化。",
    todo: "缩短脉冲或减少次数，或绕成更高的电阻。",
  },
  "coil-stuck": {
    title: "线圈卡在通电状态会烧毁",
    says: "{0}：{volts} V ÷ {ohm} Ω，热态 {stuck_a} A，而 {fuse} 为 {fuse_a} A，{fuse_s} s 后断开。绕组在 {stuck_s} s 后超过 {limit_c} °C；驱动在 {timeout_s} s 后放开。",
    why: "一个卡住的线圈电流不足以断开熔断器，只有超时能保护它。",
    todo: "给驱动设定更短的超时，或给线圈单独的熔断器。",
  },
  "coil-winding": {
    title: "线圈电阻与绕组不符",
    says: "{1}：表中为 {ohm} Ω；按匝数、线径和骨架算得 {winding_ohm} Ω，超出 {tolerance_pct} %。",
    why: "其中必有一项错误，线圈的吸力不会如设计。",
    todo: "测量线圈，再更正电阻、匝数或线径。",
  },
  "contact-hot": {
    title: "触点电流过大",
    says: "{0}：激烈游戏时有效值 {rms_a} A。{family}：{rated_a} A × {contact_share}，与邻近触点合计相当于 {loaded} 个触点发热，= {limit_a} A。",
    why: "触点过热，弹片失去弹力而烧坏。",
    todo: "把电流分到更多触点，或用更大的触点。",
  },
  "earth-second": {
    title: "回线在两处接地",
    says: "{0} 的回线在 {points} 个元件处接地：{rest}。",
    why: "回流经过金属件和地线，抬高所接处的零电位。",
    todo: "只保留一个规定的接地点，其余断开。",
  },
  "fuse-breaking": {
    title: "熔断器无法分断短路",
    says: "{1}：{volts} V ÷ {loop_ohm} Ω = {breaks_a} A 就在其后；可分断 {breaking_a} A。",
    why: "电弧持续燃烧，熔断器可能炸裂。",
    todo: "换用分断能力更高的熔断器。",
  },
  "fuse-large": {
    title: "熔断器对其后的导线过大",
    says: "{1} 可长期通过 {rated_a} A；{2} 只可通过 {limit_a} A：{single_a} A × 环境 {ambient_share} × {wires} 根成束 {bundle_share}。库存导线中 {least_type} 即可。",
    why: "低于熔断器额定值的过载使导线发热，直到绝缘失效。",
    todo: "用更小的熔断器或更粗的导线，或给该支路单独装熔断器。",
  },
  "fuse-never-opens": {
    title: "电源永远无法断开熔断器",
    says: "{1}，{rated_a} A {speed}：经 {loop_ohm} Ω 短路时 {2}（{mode}）给出 {held_a} A，为额定值的 {held_multiple} 倍，每次 {burst_ms} ms；储能另加 {stored_a2s} A²s，熔断器熔化需 {melting_a2s} A²s。",
    why: "一条支路短路使整个电源停机，无人知道是哪条支路。",
    todo: "用更小或更快的熔断器，或用能保持限流值的电源。",
    values: {
      mode: { none: "不限流", constant: "恒流", "fold-back": "折返限流", hiccup: "打嗝", latch: "锁存关断" },
    },
  },
  "fuse-overloaded": {
    title: "熔断器对其负载过小",
    says: "{1}：有效值 {rms_a} A ÷ {ambient_c} °C 时的 {ambient_share} = {steady_a} A；额定 {rated_a} A。系列中的下一档为 {required_a} A。",
    why: "无故障也会在游戏中断开。",
    todo: "用更大的额定值，或移走部分负载。",
  },
  "fuse-pulsed": {
    title: "熔断器被脉冲耗损",
    says: "{1}：{peak_a} A、最长 {pulse_ms} ms 为 {pulse_a2s} A²s；÷ {pulses} 次脉冲的 {share_pct} % = {needed_a2s} A²s。其 {rated_a} A 在 {melting_a2s} A²s 熔化；需要 {required_a} A。",
    why: "熔体每次脉冲都疲劳一点，终有一天无故障断开。",
    todo: "用更大或更慢的熔断器，或移走脉冲负载。",
  },
  "fuse-slow": {
    title: "导线在熔断器断开前受损",
    says: "{1}，{2}：经 {loop_ohm} Ω 短路，起初 {first_a} A（储能 {stored_a2s} A²s），随后 {held_a} A；{opens_s} s 后断开。{area_mm2} mm²、k = {k} 可承受 {adiabatic_a2s} A²s，即该电流 {harm_s} s：已用 {used_pct} %。库存导线中 {least_type} 即可。",
    why: "绝缘熔入邻线，线束起火。",
    todo: "用更小或更快的熔断器、更粗的导线，或能短时给出更大电流的电源。",
  },
  "fuse-volts": {
    title: "熔断器额定电压不足",
    says: "{1}：{volts} V；额定 {rated_v} V。",
    why: "断开时电弧不熄灭。",
    todo: "换用额定电压足够的熔断器。",
  },
  "led-current": {
    title: "LED 电流过大",
    says: "{0}：({volts} V − {forward_v} V) ÷ {ohm} Ω 最大 {most_a} A，占时 {duty_pct} %；可承受 {stands_a} A。E24 系列中 {e24_ohm} Ω 即可。",
    why: "它会提早变暗或损坏。",
    todo: "用更大的电阻。",
  },
  "metal-unbonded": {
    title: "可触及的金属没有接地",
    says: "{0} 有裸露金属，但接地表中没有对应的行。",
    why: "若带电导线碰到它，没有任何保护动作，有人会触电。",
    todo: "添加其接地，或注明它不需要。",
  },
  "net-drop": {
    title: "网络压降过大",
    says: "网络 {0}：从 {2} 到 {1}，最大 {most_a} A 时压降 {drop_v} V（{drop_pct} %），其中 {wires} 根导线 {wires_v} V，触点和连接 {contacts_v} V；允许 {limit_v} V（{limit_pct} %）。最有效的办法：{help}，在 {help_wire} {help_type}，余 {help_v} V。",
    why: "全部通电时远端电压不足。",
    todo: "采用所列办法，或允许更大的压降。",
    values: {
      help: {
        thicker: "换更粗的导线",
        "second-feed": "并联第二根导线",
        "shorter-chain": "另起一条链",
        none: "无",
      },
    },
  },
  "resistor-hot": {
    title: "灯的电阻过热",
    says: "{0}：{most_a} A² × {ohm} Ω × {duty_pct} % = {heat_w} W；额定 {rated_w} W。",
    why: "它会烤黄电路板并漂移。",
    todo: "用功率更大的电阻，或减小电流。",
  },
  "return-shared": {
    title: "线圈与逻辑共用回线",
    says: "{0}：{loud} 个线圈和电机与 {quiet} 个逻辑负载的电流经同样的 {wires} 根导线返回，其中有 {1} 和 {2}。",
    why: "每个脉冲都抬高逻辑的零电位，机器会复位或看到没人按的开关。",
    todo: "各用各的回线，直到星形接点。",
  },
  "supply-overloaded": {
    title: "电源过小",
    says: "{0}：激烈游戏时有效值 {rms_a} A，全部保持时 {hold_a} A，常开 {steady_a} A；额定 {rated_a} A。",
    why: "它会在游戏中限流或关断。",
    todo: "用更大的电源，或把负载移到另一个电源。",
  },
  "supply-peak": {
    title: "电源最坏时刻超过限流值",
    says: "{0}：{loads} 个负载共 {worst_a} A，限流 {limit_a} A。({worst_a} − {limit_a}) A × {volts} V，在 {pulse_ms} ms 内递减，= {needed_j} J；储能 {stored_j} J 在下降 10 % 时给出 {held_j} J。",
    why: "电压会短时下降：线圈吸力变弱，同一电源上的其他电路可能复位。",
    todo: "减少同时动作的负载（分组），增加储能，或用更大的电源。",
  },
  "wire-hot": {
    title: "导线电流过大",
    says: "{0}：激烈游戏时有效值 {rms_a} A；可通过 {single_a} A × {ambient_c} °C 环境的 {ambient_share} × {wires} 根成束、负载 {loading_pct} % 的 {bundle_share} = {limit_a} A。库存导线中 {least_type} 即可。",
    why: "绝缘超过其允许温度而软化。",
    todo: "用更粗的导线，分流，或把该线移出线束。",
  },
  "wire-unprotected": {
    title: "没有熔断器保护的导线",
    says: "{0}：第一个熔断器之前有 {wires} 根导线，共 {length_mm} mm；短路时流过 {held_a} A，最细的只可通过 {limit_a} A。{rest}",
    why: "导线会一直燃烧，直到别的东西切断电流。",
    todo: "在电源处装熔断器，或使这些导线短、分开并双重绝缘。",
  },
};
