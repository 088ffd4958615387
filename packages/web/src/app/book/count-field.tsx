import { NumberInput } from "@mantine/core";
import { useEffect, useState } from "react";
import "./count-field.css";

/** As long as somebody may still be typing, nothing is worked out. */
const TYPING_MS = 500;

/** A whole number of something; whoever listens hears of it when the typing is over. */
export function CountField({
  label,
  value,
  most,
  onCount,
  least = 1,
}: {
  readonly label: string;
  readonly value: number;
  readonly least?: number;
  readonly most: number;
  readonly onCount: (count: number) => void;
}) {
  const [typed, setTyped] = useState<number | string>(value);
  useEffect(() => setTyped(value), [value]);
  useEffect(() => {
    const count = Math.round(Number(typed));
    if (typed === "" || !(count >= least && count <= most) || count === value) return;
    const timer = setTimeout(() => onCount(count), TYPING_MS);
    return () => clearTimeout(timer);
  }, [typed, least, most, value, onCount]);
  return (
    <NumberInput
      className="count-field"
      label={label}
      min={least}
      max={most}
      allowDecimal={false}
      value={typed}
      onChange={setTyped}
    />
  );
}
