import { useEffect, useMemo } from "react";
import { Link, useLocation } from "wouter";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useDesk, useView } from "../../book/desk.tsx";
import { stepsOfPlace, USUAL } from "../../steps/plan-rows.ts";
import { usePlan } from "../../steps/use-plan.ts";
import { usePick, useWords } from "../../words.tsx";
import { benchAddress } from "../use-screws-place.ts";
import { BenchFoot } from "./bench-foot.tsx";
import { BenchHead } from "./bench-head.tsx";
import { BenchPicture } from "./bench-picture.tsx";
import { BenchText } from "./bench-text.tsx";
import { useTicks } from "./use-ticks.ts";
import "../../layout/layout.css";
import "../screws.css";
import "./bench.css";

type Step = ViewEntry<"stepLines">;

/** One step a screen, for a tablet at the bench: `/b/<book>/screws/bench/<place or all>/<step number>`. */
export default function BenchPage() {
  const words = useWords();
  const { bookId } = useDesk();
  const [path, goTo] = useLocation();
  const [placeId = "all", number = ""] = path
    .slice(`/b/${bookId}/screws/bench/`.length)
    .split("/")
    .map(decodeURIComponent);
  const lines = useView("stepLines", null);
  const plan = usePlan(placeId === "all" ? null : USUAL);
  const steps = useMemo(() => {
    if (lines === null) return null;
    if (placeId === "all") return [...lines.values()];
    return plan.plan === null ? null : stepsOfPlace(plan.plan, lines, placeId);
  }, [lines, placeId, plan.plan]);
  const index = steps === null ? -1 : indexOf(steps, Number(number));
  const step = steps?.[index] ?? null;
  useEffect(() => {
    document.title = `${words.screws.bench.title} ${step?.number ?? ""} · Pinwright`;
  }, [words, step]);
  const to = (next: Step | undefined): void => {
    if (next !== undefined) goTo(benchAddress(bookId, placeId, next.number), { replace: true });
  };
  const { ticks, setDone } = useTicks(bookId, step?.id ?? null);
  return (
    <main className="bench" id="main">
      <BenchHead
        placeId={placeId}
        step={step}
        index={index}
        count={steps?.length ?? 0}
        done={steps?.filter(({ id }) => ticks.done.includes(id)).length ?? 0}
        seconds={step === null ? 0 : (ticks.seconds[step.id] ?? 0)}
      />
      {step === null || lines === null ? (
        <Nothing waiting={steps === null} placeId={placeId} />
      ) : (
        <div className={step.panelId === null ? "bench-body" : "bench-body with-picture"}>
          {step.panelId !== null && (
            <BenchPicture key={step.id} steps={lines} step={step} panelId={step.panelId} />
          )}
          <BenchText step={step} />
        </div>
      )}
      {step !== null && (
        <BenchFoot
          done={ticks.done.includes(step.id)}
          tick={(done) => setDone(step.id, done)}
          back={index > 0 ? () => to(steps?.[index - 1]) : null}
          next={index + 1 < (steps?.length ?? 0) ? () => to(steps?.[index + 1]) : null}
        />
      )}
    </main>
  );
}

/** The step of this number, or the one that is nearest after it at this place. */
function indexOf(steps: readonly Step[], number: number): number {
  const at = steps.findIndex((step) => step.number >= number);
  return at < 0 ? (Number.isNaN(number) ? 0 : steps.length - 1) : at;
}

/** What belongs here when there is no step to show. */
function Nothing({ waiting, placeId }: { readonly waiting: boolean; readonly placeId: string }) {
  const words = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const stations = useView("stations", null);
  const station = stations?.get(placeId.split(":")[0] ?? "");
  if (waiting) return <p className="bench-nothing dim">{words.common.loading}</p>;
  return (
    <div className="bench-nothing">
      <p>
        {placeId === "all"
          ? words.screws.bench.empty
          : words.screws.bench.nothingHere(
              station === undefined ? placeId : pick(station.label, station.labelZh) || placeId,
            )}
      </p>
      <Link href={`/b/${bookId}/steps`}>{words.screws.toSteps}</Link>
    </div>
  );
}
