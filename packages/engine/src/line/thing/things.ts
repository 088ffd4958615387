import { compareText } from "@pinwright/kernel";
import { type Item, type LineResult, labelsOf, type WorkStep } from "../../model/index.ts";
import { type About, aboutId } from "../about.ts";
import { Describer, numberOf } from "./describer.ts";
import { Sharing } from "./shares.ts";
import type { NamedThing, Thing, ThingKind, ThingScrews, ThingStep } from "./thing.ts";

/** Kinds of the plain account of an id that have the same name here. */
const KINDS: Readonly<Record<About["kind"], ThingKind>> = {
  item: "item",
  point: "point",
  landing: "connector",
  net: "net",
  wire: "wire",
  harness: "harness",
  lane: "lane",
  panel: "panel",
};

/** Everything that a book says of any id or printed number. */
export class Things {
  readonly #line: LineResult;
  readonly #say: Describer;
  readonly #sharing: Sharing;

  constructor(line: LineResult) {
    this.#line = line;
    this.#say = new Describer(line);
    this.#sharing = new Sharing(line, (id) => this.#say.named(id));
  }

  /** What an id is called; the id itself where the book has no such name. */
  named(id: string): NamedThing {
    return this.#say.named(id);
  }

  /** The account of an id or a printed wire number; null when the book has nothing of this name. */
  of(id: string): Thing | null {
    const about = aboutId(this.#line, id);
    if (about !== null) return this.#ofAbout(about);
    return (
      this.#ofFuse(id) ??
      this.#ofSupply(id) ??
      this.#ofStep(id) ??
      this.#ofTest(id) ??
      this.#ofType(id) ??
      this.#ofPart(id)
    );
  }

  #ofAbout(about: About): Thing {
    const { item, id } = about;
    const kind = KINDS[about.kind];
    const isItem = kind === "item" && item !== null;
    const ids = new Set([...(item === null ? [] : [item.id]), ...(isItem ? about.children : [])]);
    const under = new Set(about.points.flatMap(({ wires }) => wires.map(({ wire }) => wire.id)));
    const [first] = about.wires;
    const printed = kind === "wire" && first !== undefined ? numberOf(first) : "";
    const harness = kind === "harness" ? this.#line.harnesses.get(id)?.harness.number : undefined;
    const type = item === null || !isItem ? null : this.#say.typeOf(item);
    const ownId = first !== undefined && kind === "wire" ? first.wire.id : id;
    return {
      ...this.#blank(kind, ownId),
      labels: about.labels ?? (kind === "wire" ? { en: printed, zh: printed } : this.#say.named(id).labels),
      itemKind: isItem ? item.kind : null,
      number: printed || (harness === undefined ? (isItem ? itemNumber(item) : "") : `${harness}`),
      type,
      place: about.place ?? about.points[0]?.point.place ?? null,
      of:
        item === null
          ? null
          : isItem
            ? item.parentId === null
              ? null
              : this.#say.named(item.parentId)
            : this.#say.named(item.id),
      children: about.children.map((child) => this.#say.named(child)),
      figures: this.#figuresOf(about),
      pins: about.points.map((point) => this.#say.pin(point)),
      wires: about.wires.filter(({ wire }) => !under.has(wire.id)).map((wire) => this.#say.wire(wire, null)),
      controls: isItem ? this.#sharing.controls(ids) : [],
      shares: isItem
        ? this.#sharing.ofItem(about, ids)
        : kind === "harness" || kind === "panel" || kind === "lane" || kind === "net"
          ? []
          : [...this.#sharing.byConnector(about, ids), ...this.#sharing.byHarness(about.harnessIds, ids)],
      parts: this.#say.partsAt(isItem ? [id] : [ownId, id], assembliesOf(about)),
      screws: isItem ? this.#screwsOf(id) : [],
      steps: this.#stepsOf((step) => whyIn(step, id, about)),
      tests: this.#testsOf(about),
      harnessIds: about.harnessIds,
      findings: this.#line.findings.filter(
        ({ subjects }) => subjects.includes(id) || subjects.includes(ownId),
      ),
    };
  }

  #ofFuse(id: string): Thing | null {
    const { machine, ratings } = this.#line;
    const rating = [...ratings.fuses.values()].find((one) => one.fuseId === id || one.elementId === id);
    const row = machine.book.tables.fuses.find((one) => one.id === id || one.id === rating?.fuseId);
    if (row === undefined) return null;
    const itemId = machine.points.get(row.from)?.itemId ?? "";
    return {
      ...this.#blank("fuse", row.id),
      labels: labelsOf(row, row.id),
      place: machine.items.get(itemId)?.place ?? null,
      of: itemId === "" ? null : this.#say.named(itemId),
      figures: {
        ratedA: row.rated_a,
        speed: row.speed,
        ...(row.size === "" || row.size === null ? {} : { size: row.size }),
        ...(rating === undefined ? {} : { steadyA: rating.steadyA, peakA: rating.peakA }),
      },
      pins: this.#say.pinsOf([row.from, row.to]),
      shares: this.#loads("fuse", row.id, this.#sharing.behind(row.id)),
      parts: row.part === null ? [] : this.#say.part(row.part, "fuse", "1"),
    };
  }

  #ofSupply(id: string): Thing | null {
    const { machine } = this.#line;
    const row = machine.book.tables.supplies.find((one) => one.id === id);
    if (row === undefined) return null;
    const itemId = machine.points.get(row.positive ?? "")?.itemId ?? "";
    return {
      ...this.#blank("supply", id),
      labels: labelsOf(row, id),
      place: machine.items.get(itemId)?.place ?? null,
      of: itemId === "" ? null : this.#say.named(itemId),
      figures: { volts: row.volts, ratedA: row.rated_a },
      pins: this.#say.pinsOf([row.positive, row.negative]),
      shares: [
        ...this.#loads("supply", id, this.#sharing.ofSupply(id)),
        ...[...this.#line.ratings.fuses.values()]
          .filter((one) => one.supplyId === id)
          .flatMap(({ fuseId, elementId }) =>
            this.#loads("fuse", fuseId ?? elementId, this.#sharing.behind(elementId)),
          ),
      ],
    };
  }

  #ofStep(id: string): Thing | null {
    const step = this.#line.steps.steps.find((one) => one.id === id);
    if (step === undefined) return null;
    return {
      ...this.#blank("step", id),
      labels: step.labels,
      number: `${step.number}`,
      place: null,
      children: [...step.itemIds, ...(step.harnessId === null ? [] : [step.harnessId])].map((one) =>
        this.#say.named(one),
      ),
      figures: { minutes: step.seconds / 60, ...(step.panelId === null ? {} : { panel: step.panelId }) },
      screws: this.#say.grouped(step.fastenerIds),
      harnessIds: step.harnessId === null ? [] : [step.harnessId],
    };
  }

  #ofTest(id: string): Thing | null {
    const row = this.#line.machine.book.tables.tests.find((one) => one.id === id);
    if (row === undefined) return null;
    const limits = { nominal: row.nominal, least: row.min, most: row.max };
    return {
      ...this.#blank("test", id),
      labels: labelsOf(row, id),
      of: this.#say.some(row.board_type ?? row.harness ?? row.mechanism_type),
      figures: {
        scope: row.scope,
        purpose: row.purpose,
        ...Object.fromEntries(
          Object.entries(limits).flatMap(([name, value]) =>
            value === null ? [] : [[name, `${value} ${row.unit ?? ""}`.trim()]],
          ),
        ),
      },
      pins: this.#say.pinsOf([row.from, row.to]),
    };
  }

  #ofType(id: string): Thing | null {
    const type = this.#say.type(id);
    if (type === null) return null;
    const items = [...this.#line.machine.items.values()].filter((item) => item.type.id === id);
    return {
      ...this.#blank("type", id),
      labels: type.labels,
      itemKind: items[0]?.kind ?? null,
      children: items.map((item) => this.#say.named(item.id)),
      parts: this.#say.partsAt([], [`board:${id}`, `mechanism:${id}`]),
      tests: this.#line.machine.book.tables.tests
        .filter((row) => row.board_type === id || row.mechanism_type === id)
        .map((row) => this.#say.named(row.id)),
    };
  }

  #ofPart(id: string): Thing | null {
    const row = this.#line.machine.book.tables.parts.find((one) => one.id === id);
    if (row === undefined) return null;
    const { lines } = this.#line.parts.bill;
    const at = lines.filter(({ childId }) => childId === id).flatMap((one) => [one.parentId, ...one.at]);
    const isThing = (one: string): boolean =>
      this.#line.machine.items.has(one) || this.#line.harnesses.has(one);
    return {
      ...this.#blank("part", id),
      labels: labelsOf(row, id),
      children: [...new Set(at)]
        .filter(isThing)
        .sort(compareText)
        .map((one) => this.#say.named(one)),
      figures: { kind: row.kind, ...(row.value === null || row.value === "" ? {} : { value: row.value }) },
      parts: this.#say.part(id, "bom", "1"),
    };
  }

  #blank(kind: ThingKind, id: string): Thing {
    return {
      ...{
        kind,
        id,
        labels: this.#say.named(id).labels,
        itemKind: null,
        number: "",
        type: null,
        place: null,
        of: null,
      },
      ...{ children: [], figures: {}, pins: [], wires: [], controls: [], shares: [], parts: [], screws: [] },
      ...{ steps: [], tests: [], harnessIds: [] },
      findings: this.#line.findings.filter(({ subjects }) => subjects.includes(id)),
    };
  }

  #loads(kind: "fuse" | "supply", of: string, loadIds: readonly string[]): Thing["shares"] {
    const items = loadIds.map((id) => this.#line.electric.loads.get(id)?.itemId ?? id);
    const things = [...new Set(items)].sort(compareText).map((id) => this.#say.named(id));
    return things.length === 0 ? [] : [{ kind, of: this.#say.named(of), things }];
  }

  #figuresOf({ item, kind, id, wires }: About): Thing["figures"] {
    if (kind === "net") {
      const net = this.#line.machine.nets.get(id);
      if (net === undefined) return {};
      return {
        class: net.class,
        ...(net.volts === null ? {} : { volts: net.volts }),
        ...(net.amps === null ? {} : { amps: net.amps }),
      };
    }
    if (kind === "harness")
      return { wires: wires.length, metres: wires.reduce((sum, { wire }) => sum + wire.cutMm, 0) / 1000 };
    if (item?.kind === "board" && kind === "item" && item.address !== null) return { address: item.address };
    return {};
  }

  #screwsOf(itemId: string): readonly ThingScrews[] {
    return this.#say.grouped(
      [...this.#line.machine.items.values()]
        .filter((item) => item.kind === "fastener" && (item.holds === itemId || item.parentId === itemId))
        .map(({ id }) => id),
    );
  }

  #stepsOf(why: (step: WorkStep) => ThingStep["why"] | null): readonly ThingStep[] {
    return this.#line.steps.steps.flatMap((step) => {
      const found = why(step);
      return found === null ? [] : [{ id: step.id, labels: step.labels, number: step.number, why: found }];
    });
  }

  #testsOf({ item, kind, id, points }: About): readonly NamedThing[] {
    const own = new Set(points.map(({ point }) => point.id));
    const type = kind === "item" ? item?.type.id : undefined;
    return this.#line.machine.book.tables.tests
      .filter(
        (row) =>
          own.has(row.from ?? "") ||
          own.has(row.to ?? "") ||
          (row.harness !== null && row.harness === id) ||
          (type !== undefined && (row.board_type === type || row.mechanism_type === type)),
      )
      .map((row) => this.#say.named(row.id));
  }
}

const itemNumber = (item: Item): string =>
  item.kind === "device" && item.number !== null ? `${item.number}` : "";

/** Assemblies of the bill that an item, harness or panel is. */
function assembliesOf({ kind, id, item }: About): readonly string[] {
  if (kind === "harness") return [`harness:${id}`];
  if (kind === "panel") return [`panel:${id}`];
  if (kind !== "item" || item === null) return [];
  return item.kind === "mechanism" ? [`mechanism:${item.type.id}`] : [];
}

function whyIn(step: WorkStep, id: string, { kind, item }: About): ThingStep["why"] | null {
  if (kind === "harness") return step.harnessId === id ? "laid" : null;
  if (kind !== "item" || item === null) return null;
  const own = item.parentId ?? id;
  if (step.itemIds.includes(id) || step.itemIds.includes(own)) return "fitted";
  if (step.fastenerIds.includes(id)) return "screwed";
  if (step.recheckIds.includes(id)) return "rechecked";
  return item.kind === "mechanism" && step.mechanismTypeId === item.type.id ? "built" : null;
}
