import { IconArrowLeft, IconArrowRight, IconCheck } from "@tabler/icons-react";
import { useEffect } from "react";
import { useWords } from "../../words.tsx";

/** Back, tick and next, each as large as a gloved finger needs. */
export function BenchFoot({
  done,
  tick,
  back,
  next,
}: {
  readonly done: boolean;
  readonly tick: (done: boolean) => void;
  readonly back: (() => void) | null;
  readonly next: (() => void) | null;
}) {
  const words = useWords().screws.bench;
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      if (event.target instanceof HTMLSelectElement || event.ctrlKey || event.altKey || event.metaKey) return;
      const go = event.key === "ArrowRight" ? next : event.key === "ArrowLeft" ? back : null;
      if (event.target instanceof Element && event.target.closest(".drawing") !== null) return;
      go?.();
    };
    addEventListener("keydown", pressed);
    return () => removeEventListener("keydown", pressed);
  }, [back, next]);
  return (
    <footer className="bench-foot">
      <div className="bench-buttons">
        <button type="button" onClick={() => back?.()} disabled={back === null}>
          <IconArrowLeft size={32} /> {words.back}
        </button>
        <button type="button" aria-pressed={done} onClick={() => tick(!done)}>
          <span className="tick-box" aria-hidden>
            {done && <IconCheck size={28} stroke={3} />}
          </span>
          {words.done}
        </button>
        <button
          type="button"
          className="bench-next"
          disabled={next === null && done}
          onClick={() => {
            tick(true);
            next?.();
          }}
        >
          {next === null ? words.last : words.next} <IconArrowRight size={32} />
        </button>
      </div>
      <p className="dim">{words.kept}</p>
    </footer>
  );
}
