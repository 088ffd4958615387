import { IconMinus, IconPlayerPause, IconPlayerPlay, IconPlus } from "@tabler/icons-react";
import { useState } from "react";
import { clockText } from "../../app/screws/bench/ticks.ts";
import { useWords } from "../../app/words.tsx";
import type { TaskClock } from "./use-clock.ts";

/** The clock of the task; a tap opens it to be held or put right, before the minutes are recorded. */
export function ClockButton({ clock }: { readonly clock: TaskClock }) {
  const { floor, floorBench } = useWords();
  const own = floorBench.clock;
  const [open, setOpen] = useState(false);
  const { seconds, isHeld, hold, setMinutes } = clock;
  const minutes = Math.round(seconds / 60);
  return (
    <div className="floor-clock-place">
      <button
        type="button"
        className="floor-clock"
        aria-expanded={open}
        aria-label={`${floor.work.minutes} ${clockText(Math.round(seconds))}${isHeld ? `, ${own.paused}` : ""}`}
        onClick={() => setOpen(!open)}
      >
        {isHeld && <IconPlayerPause size={20} aria-hidden />}
        <span role="timer" aria-hidden>
          {clockText(Math.round(seconds))}
        </span>
      </button>
      {open && (
        <fieldset className="floor-clock-open" aria-label={own.title}>
          <b>{own.title}</b>
          <button
            type="button"
            className="floor-square"
            aria-label={own.less}
            disabled={minutes === 0}
            onClick={() => setMinutes(minutes - 1)}
          >
            <IconMinus size={30} />
          </button>
          <output className="floor-figure">{minutes}</output>
          <button
            type="button"
            className="floor-square"
            aria-label={own.more}
            onClick={() => setMinutes(minutes + 1)}
          >
            <IconPlus size={30} />
          </button>
          <button type="button" className="floor-plain" onClick={() => hold(!isHeld)}>
            {isHeld ? <IconPlayerPlay size={26} aria-hidden /> : <IconPlayerPause size={26} aria-hidden />}{" "}
            {isHeld ? own.goOn : own.pause}
          </button>
          <button type="button" className="floor-main" onClick={() => setOpen(false)}>
            {own.use}
          </button>
        </fieldset>
      )}
    </div>
  );
}
