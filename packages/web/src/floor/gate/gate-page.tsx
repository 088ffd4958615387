import type { Block, UnitGate } from "@pinwright/contract";
import { IconAlertTriangle, IconCheck, IconLock } from "@tabler/icons-react";
import { useEffect, useState } from "react";
import { call } from "../../api/call.ts";
import { useMay, useSession } from "../../app/session/session.tsx";
import { usePick, useSpeech } from "../../app/words.tsx";
import { useBench } from "../tasks/bench-context.tsx";
import { useStepName } from "../tasks/task-names.ts";
import { LeadForm } from "./lead-form.tsx";

/** Whether the units at the bench may ship, and what keeps them; a lead passes over what may be passed over. */
export function GatePage() {
  const { words, language } = useSpeech();
  const own = words.floorBench.gate;
  const { unitIds, states, show } = useBench();
  const gates = useGates(unitIds, states);
  const [lifting, setLifting] = useState<Block | null>(null);
  const nameOf = useBlockName();
  const [kind, setKind] = useState<Block["gate"] | null>(null);
  const { status } = useSession();
  const mayRelease = useMay("lead");
  const [refused, setRefused] = useState("");
  const release = async (): Promise<void> => {
    try {
      for (const unit of unitIds)
        await call("releaseUnit", { parts: { unit }, body: {}, token: status.token });
      setRefused("");
    } catch (error) {
      setRefused(error instanceof Error ? error.message : String(error));
    }
  };
  if (lifting !== null) {
    const { unit, gate, of } = lifting;
    return (
      <LeadForm
        title={`${own.passOver}: ${nameOf(lifting)} · ${unit}`}
        reasons={words.floorBench.lead.passReasons}
        bodiesOf={(why) => [{ kind: "override", unit, gate, of, why }]}
        done={() => setLifting(null)}
        leave={() => setLifting(null)}
      />
    );
  }
  const blocks = gates?.flatMap((gate) => gate.blocks) ?? [];
  const standing = blocks.filter(({ lifted }) => !lifted);
  const kinds = GRAVEST_FIRST.filter((gate) => blocks.some((one) => one.gate === gate));
  const shown = kinds.find((gate) => gate === kind) ?? kinds[0];
  const released = gates?.find((gate) => gate.shippable)?.released ?? null;
  return (
    <>
      <div className="floor-body">
        <h1>{own.title}</h1>
        {gates === undefined && <p className="dim">{own.asking}</p>}
        {gates === null && (
          <p role="alert" className="amber-text">
            {own.away}
          </p>
        )}
        {gates != null && (
          <p className={standing.length === 0 ? "floor-complete" : "amber-text"}>
            {standing.length === 0 ? own.clear : own.kept(standing.length)}{" "}
            {released !== null &&
              own.released(
                new Intl.DateTimeFormat(language === "zh" ? "zh-CN" : "en-GB", {
                  dateStyle: "short",
                  timeStyle: "short",
                }).format(new Date(released.at)),
              )}
          </p>
        )}
        {kinds.length > 1 && (
          <fieldset className="floor-tabs">
            <legend className="visually-hidden">{own.title}</legend>
            {kinds.map((gate) => (
              <button key={gate} type="button" aria-pressed={gate === shown} onClick={() => setKind(gate)}>
                {own.gates[gate]} ({blocks.filter((one) => one.gate === gate && !one.lifted).length})
              </button>
            ))}
          </fieldset>
        )}
        <ul className="floor-places">
          {inOrder(blocks.filter(({ gate }) => gate === shown)).map((block) => (
            <li key={`${block.unit} ${block.gate} ${block.of}`}>
              <div className="floor-block">
                {block.lifted ? (
                  <IconCheck size={26} aria-hidden />
                ) : block.firm ? (
                  <IconLock size={26} aria-hidden />
                ) : (
                  <IconAlertTriangle size={26} aria-hidden />
                )}
                <span>
                  <b>{nameOf(block)}</b>
                  <small>
                    {own.gates[block.gate]} · {block.unit} · {own.reasons[block.why]}
                    {block.firm && ` · ${own.firm}`}
                  </small>
                </span>
              </div>
              {block.lifted ? (
                <span className="dim">{own.lifted}</span>
              ) : (
                !block.firm && (
                  <button type="button" className="floor-plain" onClick={() => setLifting(block)}>
                    {own.passOver}
                  </button>
                )
              )}
            </li>
          ))}
        </ul>
        {gates != null && standing.length === 0 && released === null && !mayRelease && (
          <p>{own.releaseLead}</p>
        )}
        <p role="alert" className="error-text">
          {refused}
        </p>
      </div>
      <footer className="floor-foot">
        <button type="button" className="floor-plain" onClick={() => show("/hand")}>
          {words.floor.back}
        </button>
        {mayRelease && gates != null && standing.length === 0 && released === null && (
          <button type="button" className="floor-main" onClick={() => void release()}>
            {own.release}
          </button>
        )}
      </footer>
    </>
  );
}

const GRAVEST_FIRST = ["recall", "defect", "test", "step", "fit"] as const;

/** What stands first, and of that what nobody can pass over; what was passed over last. */
const inOrder = (blocks: readonly Block[]): readonly Block[] => {
  const rank = ({ lifted, firm }: Block): number => (lifted ? 2 : firm ? 0 : 1);
  return blocks.toSorted((a, b) => rank(a) - rank(b));
};

/** What the server says of units, asked again whenever something of them is another; null: it does not answer. */
function useGates(unitIds: readonly string[], on: unknown): readonly UnitGate[] | null | undefined {
  const [gates, setGates] = useState<readonly UnitGate[] | null | undefined>(undefined);
  const key = unitIds.join(" ");
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for `unitIds`; `on` asks once more
  useEffect(() => {
    let wanted = true;
    Promise.all(unitIds.map((unit) => call("unitGate", { parts: { unit } }))).then(
      (found) => wanted && setGates(found),
      () => wanted && setGates(null),
    );
    return () => {
      wanted = false;
    };
  }, [key, on]);
  return gates;
}

function useBlockName(): (block: Block) => string {
  const { floor } = useSpeech().words;
  const whats: Readonly<Record<string, string>> = floor.defect.whats;
  const pick = usePick();
  const stepName = useStepName();
  const { work, states } = useBench();
  return ({ gate, of, unit }) => {
    switch (gate) {
      case "step":
        return stepName(of);
      case "test": {
        const test = work.tests.find(({ id }) => id === of);
        if (test !== undefined) return pick(test.label, test.labelZh) || of;
        return of.startsWith("continuity:") ? floor.steps.continuity : of;
      }
      case "defect":
        return whats[states.get(unit)?.defects.get(of)?.what ?? ""] ?? of;
      case "fit": {
        const place = work.places.find(({ id }) => id === of);
        return place === undefined ? of : pick(place.label, place.labelZh) || of;
      }
      case "recall":
        return of;
    }
  };
}
