import { type Day, dayText } from "./days.ts";

/** A date that no line breaks in. */
export function DayText({ day }: { readonly day: Day }) {
  const text = dayText(day);
  return (
    <time className="amount" dateTime={text}>
      {text}
    </time>
  );
}
