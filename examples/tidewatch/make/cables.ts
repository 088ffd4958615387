import type { BookRow } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";
import type { Hop } from "./wiring-bus.ts";
import { RIBBONS, VOLUME_PINS } from "./wiring-head.ts";

type Cable = Partial<BookRow<"cables">>;
type Core = Partial<BookRow<"cable_cores">>;

/** Colours of a ten-way ribbon as bought, core 1 first: the ten colours of the resistor code in their order. */
const RIBBON_COLOURS = ["BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "BK"];

/** Cables: a twisted pair for each hop of the bus, ribbons, the screened volume cable and the mains cord. */
export function cablesTopic(hops: readonly Hop[]): Topic {
  const cables: Cable[] = [];
  const cores: Core[] = [];
  hops.forEach((hop, i) => {
    const id = `cb.bus-${String(i + 1).padStart(2, "0")}`;
    cables.push({
      id,
      label: `bus pair ${i + 1}`,
      label_zh: `总线双绞 ${i + 1}`,
      harness: hop.harness,
      kind: "twisted",
      from: hop.from,
      to: hop.to,
      od_mm: 2.8,
      twists_per_m: 40,
    });
    const prefix = hop.segment === "hub" ? "link.hub" : `bus.${hop.segment}`;
    cores.push({ cable: id, core: 1, net: `${prefix}.dp` }, { cable: id, core: 2, net: `${prefix}.dn` });
  });
  for (const [prefix, from, , to] of RIBBONS) {
    const id = `cb.${prefix.replace(".", "-")}`;
    cables.push({
      id,
      label: `display ${prefix}`,
      label_zh: `显示排线 ${prefix}`,
      harness: "hs.display",
      kind: "ribbon",
      from,
      to,
      // Folded in three; 12.7 mm wide when flat.
      od_mm: 6,
      part: "cable.ribbon-10",
    });
    RIBBON_COLOURS.forEach((colour, i) => {
      cores.push({ cable: id, core: i + 1, net: `${prefix}.${i + 1}`, colour });
    });
  }
  const screened = [
    ["cb.volume-backbox", "hs.backbox-audio", "bd.audio", "il.bb-audio"],
    ["cb.volume-cabinet", "hs.cabinet-audio", "il.bb-audio", "bd.volume"],
  ] as const;
  for (const [id, harness, from, to] of screened) {
    cables.push({
      id,
      label: "screened volume cable",
      label_zh: "屏蔽音量电缆",
      harness,
      kind: "shielded",
      from,
      to,
      od_mm: 5.4,
      part: "cable.screened-5",
    });
    const bought = ["WH", "BN", "GN", "YE", "GY", "BK"];
    VOLUME_PINS.forEach((pin, i) => {
      cores.push({ cable: id, core: i + 1, net: `volume.${pin}`, colour: bought[i] ?? null });
    });
  }
  cables.push({
    id: "cb.mains-cord",
    label: "mains cord, inlet to switch",
    label_zh: "电源软线 插座至开关",
    harness: "hs.mains",
    kind: "cord",
    from: "ml.inlet",
    to: "ml.switch",
    od_mm: 6.4,
    part: "cable.cord-2x1",
  });
  cores.push(
    { cable: "cb.mains-cord", core: 1, net: "mains.inlet-l", colour: "BN" },
    { cable: "cb.mains-cord", core: 2, net: "mains.inlet-n", colour: "BU" },
  );
  return { tables: { cables: rows("cables", cables), cable_cores: rows("cable_cores", cores) } };
}
