import { PLAYFIELD_STUDS } from "./earth-devices.ts";
import { labelOf } from "./item-labels.ts";
import type { Wiring } from "./wiring-kit.ts";

/** Backbox supply: each board has fused 12 V and 5 V and a return of its own. */
function wireHeadPower(w: Wiring): void {
  const boards = [
    ["bd.main", "main", 1.8],
    ["bd.netmaster", "netmaster", 0.6],
    ["bd.audio", "audio", 1],
    ["bd.display", "display", 0.5],
    ["bd.dot-left", "dot-left", 1.1],
    ["bd.dot-right", "dot-right", 1.1],
  ] as const;
  boards.forEach(([board, name, amps], i) => {
    const from = `bd.bbpower:j${i + 2}`;
    for (const [pin, what, supply, volts] of [
      [1, "12", "sup.logic", 12],
      [2, "0", "sup.logic", 0],
      [4, "5", "sup.5", 5],
    ] as const) {
      const net = w.net(
        `bb.${name}.${what}`,
        "logic",
        `${labelOf(board).en} ${what} V`,
        `${labelOf(board).zh} ${what} V`,
        {
          supply,
          volts,
          amps,
          max_drop_pct: 3,
          source: `${from}.${pin}`,
          wire_type: "hu-20",
        },
      );
      w.end(net, "hs.backbox-power", `${from}.${pin}`, `${board}:j1.${pin}`);
    }
  });
}

function pairwise(
  w: Wiring,
  harness: string,
  prefix: string,
  label: string,
  from: string,
  to: string,
  pins: readonly number[],
  wireType: string,
): void {
  for (const pin of pins) {
    const net = w.net(`${prefix}.${pin}`, "data", `${label} ${pin}`, `${label} ${pin}`, {
      volts: 3.3,
      amps: 0.02,
      source: `${from}.${pin}`,
      wire_type: wireType,
    });
    w.end(net, harness, `${from}.${pin}`, `${to}.${pin}`);
  }
}

const TEN = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];

/** The three ribbons of the display, by net prefix, from and to. */
export const RIBBONS = [
  ["ribbon.main", "bd.main", "j4", "bd.display", "j2"],
  ["ribbon.left", "bd.display", "j3", "bd.dot-left", "j2"],
  ["ribbon.right", "bd.display", "j4", "bd.dot-right", "j2"],
] as const;

/** Conductors of the volume cable, cavity by cavity, alike on both boards. */
export const VOLUME_PINS = [1, 2, 3, 5, 6, 7] as const;

function wireAudio(w: Wiring): void {
  const names: Readonly<Record<number, string>> = {
    1: "phones left",
    2: "phones right",
    3: "phones 0 V",
    5: "volume supply",
    6: "volume",
    7: "screen",
  };
  for (const pin of VOLUME_PINS) {
    const net = w.net(`volume.${pin}`, "audio", names[pin] ?? "", `音量线 ${pin}`, {
      volts: 3.3,
      amps: 0.1,
      source: `bd.audio:j5.${pin}`,
      wire_type: "hu-24",
    });
    w.end(net, "hs.backbox-audio", `bd.audio:j5.${pin}`);
    w.through("il.bb-audio", net, "hs.backbox-audio", "hs.cabinet-audio");
    w.end(net, "hs.cabinet-audio", `bd.volume:j1.${pin}`);
  }
  for (const [side, plus, minus] of [
    ["left", 1, 2],
    ["right", 3, 4],
  ] as const) {
    for (const [pin, terminal] of [
      [plus, "pos"],
      [minus, "neg"],
    ] as const) {
      const net = w.net(
        `speaker.${side}.${terminal}`,
        "audio",
        `${side} speaker ${terminal}`,
        `${labelOf(`sp.${side}`).zh} ${terminal}`,
        {
          volts: 8,
          amps: 2,
          source: `bd.audio:j3.${pin}`,
          wire_type: "hu-20",
        },
      );
      w.end(net, "hs.backbox-audio", `bd.audio:j3.${pin}`, `sp.${side}:${terminal}`);
    }
  }
  for (const [pin, terminal] of [
    [1, "pos"],
    [2, "neg"],
  ] as const) {
    const net = w.net(
      `speaker.bass.${terminal}`,
      "audio",
      `bass speaker ${terminal}`,
      `低音扬声器 ${terminal}`,
      {
        volts: 12,
        amps: 2,
        source: `bd.audio:j4.${pin}`,
        wire_type: "hu-20",
      },
    );
    w.end(net, "hs.backbox-audio", `bd.audio:j4.${pin}`);
    w.through("il.bb-bass", net, "hs.backbox-audio", "hs.cabinet-audio");
    w.end(net, "hs.cabinet-audio", `sp.bass:${terminal}`);
  }
}

function wireMotors(w: Wiring): void {
  const motors = [
    ["bd.beacon", "mech.beacon/motor", "beacon motor", "灯塔电机", "hs.motor-playfield", 0.4],
    ["bd.motor-ship", "mech.ship/motor", "ship motor", "船电机", "hs.motor-playfield", 0.5],
    ["bd.motor-cab", "mech.shaker/motor", "shaker motor", "振动电机", "hs.cabinet-loads", 1.8],
    ["bd.motor-bb", "mech.tide-clock/motor", "tide clock motor", "潮汐钟电机", "hs.backbox-motor", 0.4],
  ] as const;
  for (const [board, motor, label, labelZh, harness, amps] of motors) {
    for (const [pin, terminal] of [
      [2, "a"],
      [4, "b"],
    ] as const) {
      const net = w.net(
        `mo.${motor.slice(5).replace("/", ".")}.${terminal}`,
        "motor",
        `${label} ${terminal}`,
        `${labelZh} ${terminal}`,
        {
          supply: "sup.motor",
          volts: 12,
          amps,
          max_drop_pct: 5,
          source: `${board}:j5.${pin}`,
          wire_type: amps > 1 ? "hu-20" : "hu-22",
        },
      );
      w.end(net, harness, `${board}:j5.${pin}`, `${motor}:${terminal}`);
    }
  }
  const lamps = { supply: "sup.motor", volts: 12, max_drop_pct: 5, wire_type: "hu-22" } as const;
  const feed = w.net("lf.beacon.j7", "lamp", "beam lamp feed", "光束灯供电", {
    ...lamps,
    amps: 0.5,
    shape: "chain",
    source: "bd.beacon:j7.1",
  });
  w.end(feed, "hs.motor-playfield", "bd.beacon:j7.1", "mech.beacon/lamp-a:a", "mech.beacon/lamp-b:a");
  for (const [pin, lamp] of [
    [2, "lamp-a"],
    [4, "lamp-b"],
  ] as const) {
    const net = w.net(
      `lo.beacon.${lamp}`,
      "lamp",
      labelOf(`mech.beacon/${lamp}`).en,
      labelOf(`mech.beacon/${lamp}`).zh,
      {
        ...lamps,
        amps: 0.25,
        source: `bd.beacon:j7.${pin}`,
      },
    );
    w.end(net, "hs.motor-playfield", `bd.beacon:j7.${pin}`, `mech.beacon/${lamp}:k`);
  }
}

/** Earth wires of one harness: a bar's studs, the ends that hang on them, and the thick ones among these. */
interface Earthing {
  readonly harness: string;
  readonly bar: string;
  readonly firstStud: number;
  readonly ends: readonly string[];
  readonly thick: ReadonlySet<string>;
}

/** A stud takes two rings. */
const RINGS_ON_A_STUD = 2;

/** Protective earth: every metal part has a wire of its own to an earth bar; what carries mains faults is thick. */
function wireEarth(w: Wiring): void {
  const net = w.net("pe", "earth", "protective earth", "保护接地", {
    volts: 0,
    amps: 6,
    shape: "star",
    source: "pe.bar:t1",
    wire_type: "pe-18",
  });
  const star = ({ harness, bar, firstStud, ends, thick }: Earthing): void => {
    const stud = (i: number): string => `${bar}:t${firstStud + Math.floor(i / RINGS_ON_A_STUD)}`;
    w.end(net, harness, ...new Set(ends.map((_, i) => stud(i))));
    // The halves of in-line connectors are ends already.
    w.end(net, harness, ...ends.filter((end) => !end.startsWith("il.")));
    const trails = ends.flatMap((end, i) => [...(i > 0 ? ["/"] : []), stud(i), end]);
    w.order(net, harness, trails, "Every metal part has an earth wire of its own.");
    ends.forEach((end, i) => {
      if (thick.has(end))
        w.wireType(net, harness, [stud(i), end], "pe-16", "It carries the fault current of the mains.");
    });
  };
  const all = (...ends: readonly string[]): Pick<Earthing, "ends" | "thick"> => ({
    ends,
    thick: new Set(ends),
  });
  star({
    harness: "hs.earth-supplies",
    bar: "pe.bar",
    firstStud: 1,
    ...all("ml.inlet:pe", "ml.filter:pe", "psu.48:pe", "psu.motor:pe", "psu.lamp:pe", "psu.logic:pe"),
  });
  star({ harness: "hs.dc", bar: "pe.bar", firstStud: 4, ...all("bd.starpoint:j1.6") });
  const [toPlayfield, onPlayfield] = w.through("il.pf-earth", net, "hs.earth-cabinet", "hs.earth-playfield");
  const [toBackbox, inBackbox] = w.through("il.bb-earth", net, "hs.earth-cabinet", "hs.earth-backbox");
  star({
    harness: "hs.earth-cabinet",
    bar: "pe.bar",
    firstStud: 5,
    ends: [
      toPlayfield,
      toBackbox,
      ...["door", "lockbar", "rail-left", "rail-right"].map((part) => `pe.${part}:pe`),
      ...["front-left", "front-right", "back-left", "back-right"].map((leg) => `pe.leg-${leg}:pe`),
    ],
    thick: new Set([toPlayfield, toBackbox]),
  });
  w.end(net, "hs.earth-backbox", "pe.hinge:pe", "pe.bb-lock:pe");
  w.order(
    net,
    "hs.earth-backbox",
    [inBackbox, "pe.hinge:pe", "pe.bb-lock:pe"],
    "The hinge is earthed first.",
  );
  w.wireType(net, "hs.earth-backbox", [inBackbox, "pe.hinge:pe"], "pe-16", "It earths the whole backbox.");
  star({
    harness: "hs.earth-playfield",
    bar: "pe.pf-bar",
    firstStud: 1,
    ends: [onPlayfield, ...PLAYFIELD_STUDS.map((stud) => `${stud}:pe`)],
    thick: new Set([onPlayfield]),
  });
  for (const stud of ["pe.bar:t10", "pe.bar:t11", "pe.bar:t12", "pe.pf-bar:t12"])
    w.spare(stud, "stud left for service");
}

export function wireHead(w: Wiring): void {
  wireHeadPower(w);
  pairwise(
    w,
    "hs.backbox-data",
    "link.master",
    "main to network master",
    "bd.main:j2",
    "bd.netmaster:j2",
    [1, 2, 3, 4, 6, 7, 8],
    "hu-24",
  );
  pairwise(
    w,
    "hs.backbox-data",
    "link.audio",
    "main to audio",
    "bd.main:j3",
    "bd.audio:j2",
    [1, 3, 4, 5, 6],
    "hu-24",
  );
  for (const [prefix, from, fromJ, to, toJ] of RIBBONS)
    pairwise(w, "hs.display", prefix, prefix, `${from}:${fromJ}`, `${to}:${toJ}`, TEN, "rb-28");
  wireAudio(w);
  wireMotors(w);
  wireEarth(w);
}
