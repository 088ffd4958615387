import { Button, NativeSelect } from "@mantine/core";
import type { ServiceBookRequest } from "@pinwright/contract";
import { useState } from "react";
import { useBuilt } from "../../revisions/releases/use-built.ts";
import { useReleases } from "../../revisions/use-releases.ts";
import { useWords } from "../../words.tsx";

const LANGUAGES = ["en", "zh"] as const;

/** What is asked for, as the address has it: `draft`, `release:A` or `unit:0031`. */
export type BookChoice = "draft" | `release:${string}` | `unit:${string}`;

/** The request that a choice stands for. */
export function requestOf(choice: BookChoice, language: ServiceBookRequest["language"]): ServiceBookRequest {
  const named = choice.slice(choice.indexOf(":") + 1);
  if (choice.startsWith("release:")) return { language, release: named };
  return choice.startsWith("unit:") ? { language, unit: named } : { language };
}

const isChoice = (text: string): text is BookChoice => text === "draft" || /^(?:release|unit):./u.test(text);

/** Chooses a revision or a serial number, and a language. */
export function ChooseBook({
  choice,
  language,
  busy,
  onMake,
}: {
  readonly choice: BookChoice;
  readonly language: ServiceBookRequest["language"];
  readonly busy: boolean;
  readonly onMake: (choice: BookChoice, language: ServiceBookRequest["language"]) => void;
}) {
  const { serviceBookApp: own } = useWords();
  const { releases } = useReleases();
  const built = useBuilt();
  const [of, setOf] = useState<BookChoice>(choice);
  const [spoken, setSpoken] = useState(language);
  const machines = [...built.values()].flat().filter(({ what }) => what === "machine");
  const options = [
    { value: "draft", label: own.draft },
    {
      group: own.releases,
      items: (releases ?? []).map(({ name }) => ({ value: `release:${name}`, label: own.release(name) })),
    },
    {
      group: own.machines,
      items: machines.map(({ unit, revision }) => ({
        value: `unit:${unit}`,
        label: own.unit(unit, revision),
      })),
    },
  ].filter((one) => !("items" in one) || one.items.length > 0);
  return (
    <form
      className="book-choose"
      onSubmit={(event) => {
        event.preventDefault();
        onMake(of, spoken);
      }}
    >
      <NativeSelect
        label={own.of}
        data={options}
        value={of}
        onChange={({ currentTarget: { value } }) => isChoice(value) && setOf(value)}
      />
      <NativeSelect
        label={own.language}
        data={LANGUAGES.map((value) => ({ value, label: own.languages[value] }))}
        value={spoken}
        onChange={({ currentTarget: { value } }) => setSpoken(value === "zh" ? "zh" : "en")}
      />
      <Button type="submit" disabled={busy}>
        {own.make}
      </Button>
    </form>
  );
}
