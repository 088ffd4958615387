import { ActionIcon, Button, NativeSelect, NumberInput } from "@mantine/core";
import { IconPlus, IconTrash } from "@tabler/icons-react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { usePick, useWords } from "../words.tsx";
import { type DraftMix, MOST_MACHINES } from "./run-draft.ts";

type Option = ViewEntry<"planGround">["options"][number];

/** Options that exclude each other, under one heading; those of no kind stand by themselves. */
function kindsOf(options: readonly Option[]): ReadonlyMap<string, readonly Option[]> {
  const kinds = new Map<string, Option[]>();
  for (const option of options) {
    const name = option.kind === "" ? option.id : option.kind;
    kinds.set(name, [...(kinds.get(name) ?? []), option]);
  }
  return kinds;
}

/** How many machines of a run are built with which options. */
export function MixField({
  options,
  machines,
  mix,
  onMix,
}: {
  readonly options: readonly Option[];
  readonly machines: number;
  readonly mix: readonly DraftMix[];
  readonly onMix: (mix: readonly DraftMix[]) => void;
}) {
  const own = useWords().runs.form;
  const pick = usePick();
  const kinds = [...kindsOf(options)];
  const rest = machines - mix.reduce((sum, { machines: n }) => sum + n, 0);
  const change = (key: string, to: Partial<DraftMix>): void =>
    onMix(mix.map((one) => (one.key === key ? { ...one, ...to } : one)));
  return (
    <fieldset className="run-mix">
      <legend>{own.mix}</legend>
      {mix.map(({ key, optionIds, machines: count }) => (
        <div key={key} className="run-mix-row">
          {kinds.map(([kind, all]) => (
            <NativeSelect
              key={kind}
              label={kind}
              value={all.find(({ id }) => optionIds.includes(id))?.id ?? ""}
              data={[
                { value: "", label: `(${own.usual})` },
                ...all.map((option) => ({
                  value: option.id,
                  label: `${pick(option.label, option.labelZh) || option.id}${option.isUsual ? ` (${own.usual})` : ""}`,
                })),
              ]}
              onChange={(event) => {
                const { value } = event.currentTarget;
                const others = optionIds.filter((id) => !all.some((option) => option.id === id));
                change(key, { optionIds: value === "" ? others : [...others, value] });
              }}
            />
          ))}
          <NumberInput
            label={own.howMany}
            min={0}
            max={MOST_MACHINES}
            allowDecimal={false}
            value={count}
            onChange={(to) => change(key, { machines: Number(to) })}
          />
          <ActionIcon
            variant="default"
            size="lg"
            aria-label={own.removeMix}
            onClick={() => onMix(mix.filter((one) => one.key !== key))}
          >
            <IconTrash size={18} />
          </ActionIcon>
        </div>
      ))}
      <p className={rest < 0 ? "error-text" : "dim"}>{own.mixAbout(rest)}</p>
      <Button
        variant="default"
        size="compact-sm"
        leftSection={<IconPlus size={14} />}
        onClick={() =>
          onMix([
            ...mix,
            { key: crypto.randomUUID(), optionIds: [], machines: Math.max(0, Math.min(1, rest)) },
          ])
        }
      >
        {own.addMix}
      </Button>
    </fieldset>
  );
}
