import { useWords } from "../../words.tsx";
import { percentText, shareStep } from "./figures.ts";
import "./share.css";

/** How much of its limit something uses: a bar, a figure in percent, and a word on top of the colour. */
export function ShareMark({ share }: { readonly share: number | null }) {
  const words = useWords().electric;
  if (share === null) return <span className="dim">{words.noLimit}</span>;
  const step = shareStep(share);
  return (
    <span className="share" data-step={step} title={words.ofLimit(percentText(share))}>
      <span className="share-bar" aria-hidden="true">
        <i style={{ width: `${Math.min(1, share) * 100}%` }} />
      </span>
      <b>{percentText(share)}</b> <span className="share-word">{words.steps[step]}</span>
    </span>
  );
}

/** What the colours and weights of shares mean. */
export function ShareScale() {
  const words = useWords().electric;
  return (
    <dl className="share-scale">
      <dt>{words.scale}</dt>
      {words.scaleSteps.map((text, step) => (
        <dd key={text}>
          <svg width="28" height="10" aria-hidden="true">
            <path className="share-line" data-step={step} d="M0 5H28" />
          </svg>
          {text} <span className="dim">{words.steps[step]}</span>
        </dd>
      ))}
    </dl>
  );
}
