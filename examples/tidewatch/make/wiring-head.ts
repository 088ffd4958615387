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

/** Protective earth: every metal part has a wire of its own to an earth bar. */
function wireEarth(w: Wiring): void {
  const net = w.net("pe", "earth", "protective earth", "保护接地", {
    volts: 0,
    amps: 10,
    shape: "star",
    source: "pe.bar:t1",
    wire_type: "pe-16",
  });
  const bar = (first: number, last: number): string[] =>
    Array.from({ length: last - first + 1 }, (_, i) => `pe.bar:t${first + i}`);
  w.end(
    net,
    "hs.mains",
    ...bar(1, 3),
    "ml.inlet:pe",
    "ml.filter:pe",
    "psu.48:pe",
    "psu.motor:pe",
    "psu.lamp:pe",
    "psu.logic:pe",
  );
  w.end(net, "hs.dc", ...bar(4, 4), "bd.starpoint:j1.6");
  w.end(
    net,
    "hs.earth-cabinet",
    ...bar(5, 9),
    "pe.door:pe",
    "pe.lockbar:pe",
    "pe.rail-left:pe",
    "pe.rail-right:pe",
    "pe.leg-front-left:pe",
    "pe.leg-front-right:pe",
    "pe.leg-back-left:pe",
    "pe.leg-back-right:pe",
  );
  w.through("il.pf-earth", net, "hs.earth-cabinet", "hs.earth-playfield");
  w.through("il.bb-earth", net, "hs.earth-cabinet", "hs.earth-backbox");
  w.end(net, "hs.earth-backbox", "pe.hinge:pe", "pe.bb-lock:pe");
  w.end(
    net,
    "hs.earth-playfield",
    ...Array.from({ length: 11 }, (_, i) => `pe.pf-bar:t${i + 1}`),
    ...PLAYFIELD_STUDS.map((stud) => `${stud}:pe`),
  );
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
