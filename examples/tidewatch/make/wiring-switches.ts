import { beside } from "./board-kit.ts";
import { KEY_AT } from "./electrics-node-boards.ts";
import { labelOf } from "./item-labels.ts";
import type { Wiring } from "./wiring-kit.ts";

interface Bank {
  readonly board: string;
  readonly connector: "j3" | "j4" | "j6";
  readonly keyAt: number;
  readonly inputs: number;
  readonly harness: string;
  /** Switches by input; two terminals `com` and `no`. */
  readonly switches: readonly string[];
}

const half = (board: string, connector: "j3" | "j4", harness: string, switches: readonly string[]): Bank => ({
  board,
  connector,
  keyAt: KEY_AT[`switch16.${connector}`],
  inputs: 8,
  harness,
  switches,
});
const own = (
  board: string,
  keyAt: number,
  inputs: number,
  harness: string,
  switches: readonly string[],
): Bank => ({ board, connector: "j6", keyAt, inputs, harness, switches });

const FRONT = "hs.switch-front";
const MIDDLE = "hs.switch-mid";
const REAR = "hs.switch-rear";
/** Sensors have harnesses of their own, which keep away from coils. */
const HALLS = "hs.sensor-hall";

const BANKS: readonly Bank[] = [
  half("bd.switch-1", "j3", FRONT, [
    "sw.outlane-left",
    "sw.inlane-left",
    "mech.kickback/home",
    "mech.up-post/up",
    "mech.trough/drain",
  ]),
  half("bd.switch-1", "j4", FRONT, ["sw.fog-1", "sw.fog-2", "sw.fog-3", "sw.rebound-1", "sw.star-3"]),
  half("bd.switch-2", "j3", FRONT, [
    "sw.inlane-right",
    "sw.outlane-right",
    "mech.trough/exit",
    "mech.plunger/home",
    "sw.plunger-lane",
  ]),
  half("bd.switch-2", "j4", FRONT, ["sw.buoy-1", "sw.buoy-2", "sw.rebound-2", "sw.star-4"]),
  half("bd.switch-3", "j3", MIDDLE, [
    "mech.drops/t1",
    "mech.drops/t2",
    "mech.drops/t3",
    "mech.drops/t4",
    "mech.drops/home",
    "sw.gull-1",
    "sw.captive",
    "sw.star-1",
  ]),
  half("bd.switch-3", "j4", MIDDLE, [
    "sw.anchor-left",
    "sw.orbit-left-low",
    "sw.orbit-left-high",
    "sw.ramp-left-enter",
    "sw.ramp-left-made",
    "sw.wireform-left",
    "mech.spinner/switch",
  ]),
  half("bd.switch-4", "j3", MIDDLE, [
    "sw.gull-2",
    "mech.drop-cave/down",
    "mech.saucer/ball",
    "sw.wave-1",
    "sw.wave-2",
    "sw.wave-3",
    "sw.rebound-3",
    "sw.star-2",
  ]),
  half("bd.switch-4", "j4", MIDDLE, [
    "sw.anchor-right",
    "sw.orbit-right-low",
    "sw.orbit-right-high",
    "mech.lifter/up",
    "sw.plunger-exit",
    "sw.ramp-right-enter",
    "sw.ramp-right-made",
    "sw.wireform-right",
  ]),
  half("bd.switch-5", "j3", REAR, [
    "sw.rebound-4",
    "sw.rebound-5",
    "sw.rebound-6",
    "mech.wreck/ball",
    "mech.gate-left/pass",
    "sw.top-lane-1",
    "sw.top-lane-2",
    "sw.top-lane-3",
  ]),
  half("bd.switch-5", "j4", REAR, [
    "mech.gate-right/pass",
    "mech.diverter/position",
    "mech.lock/b1",
    "mech.lock/b2",
    "mech.lock/b3",
  ]),
  own("bd.flip-left", 3, 1, FRONT, ["mech.flip-left/eos"]),
  own("bd.flip-right", 3, 1, FRONT, ["mech.flip-right/eos"]),
  own("bd.flip-upper", 3, 1, MIDDLE, ["mech.flip-upper/eos"]),
  own("bd.sling-left", 2, 2, FRONT, ["sw.sling-left-low", "sw.sling-left-high"]),
  own("bd.sling-right", 2, 2, FRONT, ["sw.sling-right-low", "sw.sling-right-high"]),
  own("bd.bumper-left", 3, 1, REAR, ["mech.bumper-left/spoon"]),
  own("bd.bumper-right", 3, 1, REAR, ["mech.bumper-right/spoon"]),
  own("bd.bumper-low", 3, 1, REAR, ["mech.bumper-low/spoon"]),
  own("bd.beacon", 3, 1, REAR, ["mech.beacon/home"]),
  own("bd.motor-ship", 2, 2, REAR, ["mech.ship/port", "mech.ship/starboard"]),
  own("bd.motor-bb", 2, 2, "hs.backbox-motor", ["mech.tide-clock/home"]),
  half("bd.switch-cab", "j3", "hs.cabinet-front", [
    "sw.door",
    "sw.slam",
    "sw.coin-1",
    "sw.coin-2",
    "sw.service-back",
    "sw.service-down",
    "sw.service-up",
    "sw.service-enter",
  ]),
  half("bd.switch-cab", "j4", "hs.cabinet-front", [
    "sw.start",
    "sw.action",
    "sw.flip-left",
    "sw.flip-right",
    "sw.tilt",
  ]),
];

/** Switches that sit beyond an in-line connector. */
const BEYOND: ReadonlyMap<string, readonly [inline: string, harness: string]> = new Map<
  string,
  readonly [string, string]
>([
  ...["sw.ramp-left-enter", "sw.ramp-left-made", "sw.wireform-left", "mech.spinner/switch"].map(
    (id) => [id, ["il.ramp-left", "hs.ramp-left"]] as const,
  ),
  ...["sw.ramp-right-enter", "sw.ramp-right-made", "sw.wireform-right"].map(
    (id) => [id, ["il.ramp-right", "hs.ramp-right"]] as const,
  ),
  ...["slam", "coin-1", "coin-2", "service-back", "service-down", "service-up", "service-enter"].map(
    (name) => [`sw.${name}`, ["il.coin-door", "hs.coin-door"]] as const,
  ),
]);

const netName = (item: string): string => item.replace(/^(?:mech|sw)\./, "").replace("/", ".");

function wireBank(w: Wiring, bank: Bank): void {
  const at = (n: number): string => `${bank.board}:${bank.connector}.${beside(bank.keyAt, n)}`;
  const name = `${bank.board.slice(3)}.${bank.connector}`;
  const columns = { supply: null, volts: 5, wire_type: "hu-24" } as const;
  const common = w.net(`sc.${name}`, "switch", `switch common ${name}`, `开关公共线 ${name}`, {
    ...columns,
    volts: 0,
    amps: 0.05,
    shape: "chain",
    source: at(1),
  });
  w.end(common, bank.harness, at(1));
  const passed = new Set<string>();
  bank.switches.forEach((item, i) => {
    const label = labelOf(item);
    const net = w.net(`si.${netName(item)}`, "switch", label.en, label.zh, {
      ...columns,
      amps: 0.01,
      source: at(i + 2),
    });
    w.end(net, bank.harness, at(i + 2));
    const beyond = BEYOND.get(item);
    if (beyond !== undefined) {
      if (!passed.has(beyond[0])) w.through(beyond[0], common, bank.harness, beyond[1]);
      passed.add(beyond[0]);
      w.through(beyond[0], net, bank.harness, beyond[1]);
    }
    const harness = beyond?.[1] ?? bank.harness;
    w.end(common, harness, `${item}:com`);
    w.end(net, harness, `${item}:no`);
  });
  const status = bank.board === "bd.switch-cab" && bank.connector === "j4";
  if (status) wireStatus(w, common, bank.harness, at(bank.switches.length + 2));
  for (let n = bank.switches.length + (status ? 2 : 1); n <= bank.inputs; n += 1)
    w.spare(at(n + 1), "input for a later switch");
}

/** The interlock board tells the cabinet switch board that 48 V is on. */
function wireStatus(w: Wiring, common: string, harness: string, input: string): void {
  const net = w.net("si.coil-power", "switch", "48 V present", "48 V 存在", {
    volts: 5,
    amps: 0.01,
    wire_type: "hu-24",
    source: input,
  });
  w.end(net, harness, input, "bd.interlock:j5.1");
  w.end(common, harness, "bd.interlock:j5.3");
}

/** The door loop that holds the interlock relay, through the second switch at the coin door. */
function wireLoop(w: Wiring): void {
  const back = w.net("interlock.back", "logic", "interlock loop, back", "联锁回路 返回", {
    supply: "sup.logic",
    volts: 12,
    amps: 0.08,
    wire_type: "hu-22",
    source: "sw.interlock:no",
  });
  w.end("logic.3f", "hs.cabinet-front", "bd.interlock:j3.1", "sw.interlock:com");
  w.end(back, "hs.cabinet-front", "sw.interlock:no", "bd.interlock:j3.3");
  for (const pin of ["bd.motor-cab:j6.1", "bd.motor-cab:j6.3", "bd.motor-cab:j6.4"])
    w.spare(pin, "the shaker has no switch");
}

/** Sensors: two magnetic ones, two beams, and the trough's own pair of boards. */
function wireSensors(w: Wiring): void {
  const wires = (
    harness: string,
    name: string,
    label: string,
    pairs: readonly (readonly [string, string, string])[],
  ) => {
    for (const [from, to, what] of pairs) {
      const net = w.net(`sn.${name}.${what}`, "sensor", `${label}, ${what}`, `${label} ${what}`, {
        volts: what === "zero" || what === "e" ? 0 : 5,
        amps: 0.03,
        wire_type: "hu-24",
        source: from,
      });
      w.end(net, harness, from, to);
    }
  };
  const hall = (sensor: string, connector: string, first: number): void =>
    wires(HALLS, sensor, `sensor ${sensor}`, [
      [`bd.hall:${connector}.${first}`, `sn.${sensor}:vcc`, "supply"],
      [`bd.hall:${connector}.${first + 1}`, `sn.${sensor}:out`, "out"],
      [`bd.hall:${connector}.${first + 2}`, `sn.${sensor}:gnd`, "zero"],
    ]);
  hall("magnet", "j3", 2);
  hall("cave", "j4", 1);
  const beam = (name: string, side: string): void =>
    wires(`hs.beam-${side}`, name, `beam ${name}`, [
      [`bd.opto-${side}:j3.1`, `sn.${name}-tx:a`, "a"],
      [`bd.opto-${side}:j3.3`, `sn.${name}-tx:k`, "k"],
      [`bd.opto-${side}:j3.4`, `sn.${name}-rx:c`, "c"],
      [`bd.opto-${side}:j3.5`, `sn.${name}-rx:e`, "e"],
    ]);
  beam("skill", "right");
  beam("wreck", "left");
  wires(FRONT, "trough", "trough emitters", [
    ["bd.trough-rx:j3.1", "bd.trough-tx:j1.1", "plus"],
    ["bd.trough-rx:j3.2", "bd.trough-tx:j1.2", "minus"],
  ]);
}

export function wireSwitches(w: Wiring): void {
  for (const bank of BANKS) wireBank(w, bank);
  wireLoop(w);
  wireSensors(w);
}
