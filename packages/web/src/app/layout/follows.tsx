import { findingWords } from "@pinwright/words";
import { memo, type ReactNode, useSyncExternalStore } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useView } from "../book/desk.tsx";
import { addressOf } from "../book/place-of.ts";
import { useSpeech, useWords } from "../words.tsx";
import type { Gestures } from "./gestures.ts";

type Effect = ViewEntry<"layoutEffects">;
type Of<W extends Effect["what"]> = Extract<Effect, { what: W }>;

/** So many of a kind are shown; a wider change is better looked at in its own section. */
const MOST = 40;

const ofKind = <W extends Effect["what"]>(effects: Iterable<Effect>, what: W): readonly Of<W>[] =>
  [...effects].filter((effect): effect is Of<W> => effect.what === what);

/** What the last change, or the drag that is going on, does to wires, bundles and findings. */
export const Follows = memo(function Follows({
  selected,
  gestures,
}: {
  readonly selected: readonly string[];
  readonly gestures: Gestures;
}) {
  const words = useWords();
  const own = words.layout.follows;
  const dragging = useSyncExternalStore(
    gestures.overlay.subscribe,
    () => gestures.overlay.get().dragged !== null,
  );
  const effects = useView("layoutEffects", { ids: selected });
  if (effects === null) return null;
  const all = [...effects.values()];
  const wires = ofKind(all, "wire");
  const bundles = ofKind(all, "bundle");
  const harnesses = ofKind(all, "harness");
  const findings = ofKind(all, "finding");
  const changed =
    wires.some((wire) => wire.state !== "same") || bundles.length + harnesses.length + findings.length > 0;
  if (!changed && !dragging) return null;
  return (
    <section className="follows" aria-label={own.title}>
      <h3>{own.title}</h3>
      <p className="dim">{dragging ? own.dragging : own.from}</p>
      {!changed && <p>{wires.length === 0 ? own.noWires : own.nothing}</p>}
      <Group title={own.wires} count={wires.length}>
        <table className="figures">
          <tbody>
            {wires.slice(0, MOST).map((wire) => (
              <WireRow key={wire.id} wire={wire} />
            ))}
          </tbody>
        </table>
      </Group>
      <Group title={own.findings} count={findings.length}>
        {findings.slice(0, MOST).map((effect) => (
          <FindingRow key={`${effect.finding.rule} ${effect.finding.subjects.join(" ")}`} effect={effect} />
        ))}
      </Group>
      <Group title={own.bundles} count={bundles.length}>
        {bundles.slice(0, MOST).map((bundle) => (
          <BundleRow key={`${bundle.harnessId} ${bundle.branchId}`} bundle={bundle} />
        ))}
      </Group>
      <Group title={own.harnesses} count={harnesses.length}>
        {harnesses.slice(0, MOST).map((harness) => (
          <p key={harness.harnessId} className="effect">
            <b>H{harness.number}</b> {own.metres(harness.metres, harness.metresChange)},{" "}
            {own.minutes(harness.minutes, harness.minutesChange)}
          </p>
        ))}
      </Group>
    </section>
  );
});

function Group({
  title,
  count,
  children,
}: {
  readonly title: string;
  readonly count: number;
  readonly children: ReactNode;
}) {
  const words = useWords();
  if (count === 0) return null;
  return (
    <div className="group">
      <h4>
        {title} <span className="dim">{count}</span>
      </h4>
      {children}
      {count > MOST && <p className="dim">{words.layout.follows.more(count - MOST)}</p>}
    </div>
  );
}

const WireRow = memo(function WireRow({ wire }: { readonly wire: Of<"wire"> }) {
  const words = useWords();
  const { bookId } = useDesk();
  const own = words.layout.follows;
  const change =
    wire.state === "new"
      ? own.newOnes
      : wire.state === "gone"
        ? own.goneOnes
        : wire.state === "same"
          ? own.same
          : own.change(wire.changeMm ?? 0);
  return (
    <tr className={wire.state}>
      <th scope="row">
        <Link href={addressOf(bookId, { kind: "wire", id: wire.id })}>{wire.label}</Link>
      </th>
      <td>{wire.colour}</td>
      <td className="net">{wire.netId}</td>
      <td className="number">{words.layout.mm(wire.lengthMm)}</td>
      <td className="number">{change}</td>
    </tr>
  );
});

const BundleRow = memo(function BundleRow({ bundle }: { readonly bundle: Of<"bundle"> }) {
  const words = useWords();
  const own = words.layout.follows;
  const at = bundle.kind === "tail" ? bundle.branchId.slice("tail:".length) : bundle.branchId;
  const state = bundle.state === "new" ? own.newOnes : bundle.state === "gone" ? own.goneOnes : "";
  return (
    <p className="effect">
      <b>H{bundle.number}</b> {own.kinds[bundle.kind]} {at}:{" "}
      {own.diameter(bundle.laidMm, bundle.state === "changed" ? bundle.beforeMm : null)} {state}
    </p>
  );
});

const FindingRow = memo(function FindingRow({ effect }: { readonly effect: Of<"finding"> }) {
  const { words, language } = useSpeech();
  const own = words.layout.follows;
  const { finding, state } = effect;
  const wording = findingWords(language, finding.rule);
  const stateText = { new: own.newOnes, gone: own.goneOnes, changed: own.changedOnes }[state];
  return (
    <p className={`effect finding ${finding.severity} ${state}`}>
      <b>
        {words.common.severity[finding.severity]}, {stateText}: {wording.title}
      </b>
      <br />
      {wording.say(finding)}
    </p>
  );
});
