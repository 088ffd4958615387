import { TextInput } from "@mantine/core";
import { IconSearch } from "@tabler/icons-react";
import { useWords } from "../../words.tsx";

/** Field for what a table is narrowed to. */
export function FilterField({
  value,
  onChange,
}: {
  readonly value: string;
  readonly onChange: (value: string) => void;
}) {
  const words = useWords().lists;
  return (
    <TextInput
      aria-label={words.filter}
      placeholder={words.filterHint}
      leftSection={<IconSearch size={16} />}
      value={value}
      onChange={(event) => onChange(event.currentTarget.value)}
    />
  );
}

/** Whether a text has every word that is asked for. */
export function hasWords(text: string, asked: string): boolean {
  const lower = text.toLowerCase();
  return asked
    .toLowerCase()
    .split(/\s+/u)
    .every((word) => lower.includes(word));
}
