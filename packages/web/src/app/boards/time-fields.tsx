import { Button, NumberInput } from "@mantine/core";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { rangeOf, TIME_NAMES, type TimeName, type Times, unitOf } from "./solder-times.ts";

/** The times that the choice hangs on, each to be tried otherwise with a slider or a number; the shop keeps its own. */
export function TimeFields({
  shop,
  times,
  setTimes,
}: {
  readonly shop: ViewEntry<"solderBasis">["times"];
  readonly times: Times;
  readonly setTimes: (times: Times) => void;
}) {
  const words = useWords().boards;
  const { bookId } = useDesk();
  const changed = TIME_NAMES.filter((name) => times[name] !== undefined && times[name] !== shop[name]);
  const set = (name: TimeName, value: number): void => {
    if (Number.isFinite(value) && value >= 0) setTimes({ ...times, [name]: value });
  };
  return (
    <section className="time-fields" aria-label={words.times}>
      <h3>{words.times}</h3>
      <p className="times-head">
        <Button
          variant="default"
          size="compact-sm"
          disabled={changed.length === 0}
          onClick={() => setTimes({})}
        >
          {words.timesAsShop}
        </Button>
        {changed.length > 0 && <span className="amber-text">{words.timesChanged(changed.length)}</span>}
        <Link href={`/b/${bookId}/tables/shop_settings?id=hand_joint_s`}>{words.toSettings}</Link>
      </p>
      {TIME_NAMES.map((name) => {
        const value = times[name] ?? shop[name];
        const { most, step } = rangeOf(name, shop[name]);
        return (
          <div key={name} className={changed.includes(name) ? "time-field changed" : "time-field"}>
            <span>{words.timeNames[name]}</span>
            <input
              type="range"
              min={name === "bath_people" ? 1 : 0}
              max={most}
              step={step}
              value={value}
              aria-label={words.timeNames[name]}
              onChange={(event) => set(name, Number(event.currentTarget.value))}
            />
            <NumberInput
              aria-label={words.timeNames[name]}
              suffix={` ${words.units[unitOf(name)]}`.trimEnd()}
              min={name === "bath_people" ? 1 : 0}
              step={step}
              value={value}
              onChange={(next) => next !== "" && set(name, Number(next))}
            />
          </div>
        );
      })}
    </section>
  );
}
