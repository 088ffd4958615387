import { areLinked, netIndex } from "@pinwright/engine";
import { at, first, ids, least, loneWires, most, ofNet, only, singleBoards, wiresOf } from "./about.ts";
import type { Mutation } from "./mutation.ts";

export const nets: readonly Mutation[] = [
  {
    name: "one contact of the fullest housing that is split between two harnesses",
    rule: "housing-shared",
    plan: (sound) => {
      const { machine } = sound;
      const isSwitch = loneWires(sound).filter(({ netClass }) => netClass === "switch");
      const ways = (wire: (typeof isSwitch)[number]) =>
        Math.max(...[wire.a, wire.b].map((end) => at(sound, end).landing?.pointIds.length ?? 0));
      const wire = most(isSwitch, ways);
      const end = most([wire.a, wire.b], (id) => at(sound, id).landing?.pointIds.length ?? 0);
      const landing = at(sound, end).landing?.id ?? "";
      const other = least(machine.harnesses.values(), ({ id, number }) =>
        id === wire.harnessId ? 999 : number,
      );
      const own = ofNet(sound, wire.netId);
      const items = ids(...[wire.a, wire.b].map((id) => at(sound, id).item?.id ?? ""));
      return {
        victim: [landing, wire.harnessId, other.id],
        change: (edit) => edit.set("ends", { point: end }, { harness: other.id }),
        // The net is in two halves of one end each; nobody reads the switch.
        follows: [first("end-unwired", own), only("net-split", own), first("device-unread", items)],
      };
    },
  },
  {
    name: "the in-line connector with most wires, one cavity left empty on one half",
    rule: "inline-half-open",
    plan: (sound) => {
      const { machine } = sound;
      const halves = machine.ends.filter(({ point }) => at(sound, point).landing?.half === "b");
      const count = (item: string) => halves.filter(({ point }) => at(sound, point).item?.id === item).length;
      const { point, net } = most(halves, (end) => count(at(sound, end.point).item?.id ?? ""));
      const own = ofNet(sound, net);
      const mate = point.replace(":b.", ":a.");
      return {
        victim: [point, mate],
        change: (edit) => edit.remove("ends", { point }),
        follows: [first("net-split", own), first("end-unwired", own)],
      };
    },
  },
  {
    name: "the board with most wires of data, without its link from plug to plug",
    rule: "net-split",
    plan: (sound) => {
      const { machine } = sound;
      const netOf = new Map(machine.ends.map(({ point, net }) => [point, net]));
      const links = machine.elements.filter(({ row, itemId, fromPointId, toPointId }) => {
        const net = netOf.get(fromPointId);
        return (
          row.kind === "link" &&
          net === netOf.get(toPointId) &&
          machine.nets.get(net ?? "")?.class === "data" &&
          singleBoards(sound).some(({ id }) => id === itemId)
        );
      });
      const link = most(links, ({ fromPointId }) => {
        const net = netOf.get(fromPointId) ?? "";
        return wiresOf(sound).filter(({ netId }) => netId === net).length;
      });
      const net = netOf.get(link.fromPointId) ?? "";
      return {
        victim: [net],
        change: (edit) => edit.remove("elements", { id: link.row.id }),
        // The pinned chain counts on the link.
        follows: [first("choice-not-followed", ids(net))],
      };
    },
  },
  {
    name: "the switch with the longest wire, its wire taken off",
    rule: "net-single-end",
    plan: (sound) => {
      const wire = most(
        loneWires(sound).filter(({ netClass }) => netClass === "switch"),
        ({ finishedMm }) => finishedMm,
      );
      const [off = "", left = ""] = [wire.a, wire.b].sort(
        (p, q) => (at(sound, p).connector === null ? 0 : 1) - (at(sound, q).connector === null ? 0 : 1),
      );
      return {
        victim: [wire.netId, left],
        change: (edit) => edit.remove("ends", { point: off }),
        follows: [
          only("pin-unwired", ids(off)),
          first("end-unwired", ids(left)),
          first("device-unread", ids(at(sound, off).item?.id ?? "")),
        ],
      };
    },
  },
  {
    name: "the first contact of the fullest board that is spare, but nobody says so",
    rule: "pin-unwired",
    plan: (sound) => {
      const { machine } = sound;
      const spares = machine.book.tables.choices.filter(
        ({ kind, subject }) => kind === "spare" && machine.points.get(subject)?.use === "live",
      );
      const { subject } = most(spares, (one) => at(sound, one.subject).item?.footprint.length ?? 0);
      return {
        victim: [subject],
        change: (edit) => edit.remove("choices", { kind: "spare", subject }),
      };
    },
  },
  {
    name: "a pin of the largest connector of a single board, marked spare though it is wired",
    rule: "end-on-spare",
    plan: (sound) => {
      const single = new Set(singleBoards(sound).map(({ id }) => id));
      const ends = sound.machine.ends.filter(({ point }) => single.has(at(sound, point).item?.id ?? ""));
      const { point, net } = most(ends, (end) => at(sound, end.point).connector?.ways ?? 0);
      const { connector, pin } = at(sound, point);
      return {
        victim: [point, net],
        change: (edit) =>
          edit.set("pins", { connector: connector?.id ?? "", pin: pin ?? 0 }, { use: "spare" }),
      };
    },
  },
  {
    name: "a spare stud of the earth bar with most studs, wired to the stud beside it",
    rule: "wire-loops-back",
    plan: (sound) => {
      const { machine } = sound;
      const index = netIndex(machine);
      const netOf = new Map(machine.ends.map(({ point, net }) => [point, net]));
      const spares = [...(machine.choices.get("spare")?.keys() ?? [])].filter(
        (id) => !netOf.has(id) && (at(sound, id).family?.wires_per_contact ?? 0) > 1,
      );
      const spare = most(spares, (id) => at(sound, id).landing?.pointIds.length ?? 0);
      const used = at(sound, spare).landing?.pointIds.filter(
        (id) => netOf.has(id) && areLinked(index, id, spare),
      );
      const beside =
        used?.findLast((id) => wiresOf(sound).filter(({ a, b }) => a === id || b === id).length < 2) ?? "";
      const net = netOf.get(beside) ?? "";
      const harness = machine.ends.find(({ point }) => point === beside)?.harness ?? "";
      const subject = `${net}|${harness}`;
      const value = machine.choices.get("chain")?.get(subject)?.value ?? "";
      const [a = "", b = ""] = [beside, spare].sort();
      return {
        victim: [`${net}|${harness}|${a}|${b}`, a, b],
        change: (edit) => {
          edit.remove("choices", { kind: "spare", subject: spare });
          edit.add("ends", { point: spare, net, harness });
          edit.set("choices", { kind: "chain", subject }, { value: `${value} / ${beside} - ${spare}` });
        },
      };
    },
  },
  {
    name: "the pin of a single board that is meant for another class than its net",
    rule: "pin-class",
    plan: (sound) => {
      const { machine } = sound;
      const single = new Set(singleBoards(sound).map(({ id }) => id));
      const ends = machine.ends.filter(({ point, net }) => {
        const { item, connector, pin } = at(sound, point);
        return (
          single.has(item?.id ?? "") &&
          machine.nets.get(net)?.class === "audio" &&
          machine.book.tables.pins.some(
            (row) => row.connector === connector?.id && row.pin === pin && row.class !== "",
          )
        );
      });
      const { point, net } = most(ends, (end) => at(sound, end.point).connector?.ways ?? 0);
      const { connector, pin } = at(sound, point);
      return {
        victim: [point, net],
        change: (edit) =>
          edit.set("pins", { connector: connector?.id ?? "", pin: pin ?? 0 }, { class: "lamp" }),
      };
    },
  },
  {
    name: "the longest twisted pair, one core said to carry the supply beside it",
    rule: "core-unwired",
    plan: (sound) => {
      const { machine } = sound;
      const wires = wiresOf(sound).filter(({ cableId, core }) => cableId !== null && core === 2);
      const wire = most(
        wires.filter(({ cableId }) =>
          machine.book.tables.cables.some(({ id, kind }) => id === cableId && kind === "twisted"),
        ),
        ({ finishedMm }) => finishedMm,
      );
      const stranger = most(machine.nets.values(), ({ class: c, volts }) =>
        c === "mains" ? (volts ?? 0) : 0,
      );
      return {
        victim: [wire.cableId ?? "", stranger.id],
        change: (edit) =>
          edit.set("cable_cores", { cable: wire.cableId ?? "", core: 2 }, { net: stranger.id }),
      };
    },
  },
  {
    name: "a pinned chain that names a board which is gone",
    rule: "choice-not-followed",
    plan: (sound) => {
      const chains = sound.machine.book.tables.choices.filter(
        ({ kind, held }) => kind === "chain" && held === "pinned",
      );
      const { subject, value } = most(chains, (chain) => (chain.value ?? "").split(" ").length);
      const [net = "", harness = ""] = subject.split("|");
      return {
        victim: [net, harness, "bd.gone:j1.1"],
        change: (edit) => edit.set("choices", { kind: "chain", subject }, { value: `${value} bd.gone:j1.1` }),
      };
    },
  },
];
