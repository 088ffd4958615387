import { IconX } from "@tabler/icons-react";
import { Link, useLocation } from "wouter";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useDesk, useView } from "../../book/desk.tsx";
import { usePick, useWords } from "../../words.tsx";
import { benchAddress, screwsAddress } from "../use-screws-place.ts";
import { clockText } from "./ticks.ts";

/** Where one is: place, step of how many, and the time on it beside the planned one. */
export function BenchHead({
  placeId,
  step,
  index,
  count,
  done,
  seconds,
}: {
  readonly placeId: string;
  readonly step: ViewEntry<"stepLines"> | null;
  readonly index: number;
  readonly count: number;
  readonly done: number;
  readonly seconds: number;
}) {
  const words = useWords();
  const own = words.screws.bench;
  const pick = usePick();
  const { bookId } = useDesk();
  const [, goTo] = useLocation();
  const stations = useView("stations", null);
  const places = [...(stations?.values() ?? [])].flatMap(({ id, label, labelZh, people }) => {
    const name = pick(label, labelZh) || id;
    const persons = Array.from({ length: people }, (_, i) => ({
      value: `${id}:${i + 1}`,
      label: people === 1 ? name : words.steps.personAt(name, i + 1),
    }));
    return people === 1 ? persons : [{ value: id, label: name }, ...persons];
  });
  return (
    <header className="bench-head">
      <Link
        className="bench-leave"
        href={screwsAddress(bookId, step === null ? {} : { stepId: step.id })}
        aria-label={own.leave}
        title={own.leave}
      >
        <IconX size={28} />
      </Link>
      <select
        aria-label={own.place}
        value={places.find(({ value }) => value === placeId || value === `${placeId}:1`)?.value ?? "all"}
        onChange={(event) => goTo(benchAddress(bookId, event.currentTarget.value, 1), { replace: true })}
      >
        <option value="all">{own.all}</option>
        {places.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
      {step !== null && (
        <>
          <p className="bench-count" role="status">
            <b>{own.stepOf(index + 1, count)}</b>
            <span className="dim">{own.doneOf(done, count)}</span>
          </p>
          <p className="bench-clock">
            <b aria-hidden>{clockText(seconds)}</b>
            <span className="dim">{own.planned(clockText(step.seconds))}</span>
          </p>
        </>
      )}
    </header>
  );
}
