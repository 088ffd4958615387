import { Button, NativeSelect, TextInput } from "@mantine/core";
import { pathTo } from "@pinwright/contract";
import { type FormEvent, useState } from "react";
import { useDesk } from "../../book/desk.tsx";
import { useReleases } from "../../revisions/use-releases.ts";
import { useSpeech } from "../../words.tsx";
import type { Asked } from "./use-fault-file.ts";

/** Which machine is meant, and the page of it for an owner. */
export function WhichMachine({
  asked,
  choose,
}: {
  readonly asked: Asked;
  readonly choose: (asked: Asked) => void;
}) {
  const { language, words } = useSpeech();
  const faults = words.serviceFaults;
  const { bookId } = useDesk();
  const { releases } = useReleases();
  const [serial, setSerial] = useState(asked.unit ?? "");
  const open = (event: FormEvent): void => {
    event.preventDefault();
    const unit = serial.trim();
    choose({ release: null, unit: unit === "" ? null : unit });
  };
  const query = {
    language,
    ...(asked.release === null ? {} : { release: asked.release }),
    ...(asked.unit === null ? {} : { unit: asked.unit }),
  };
  const names = (releases ?? []).map(({ name }) => ({
    value: `r ${name}`,
    label: faults.whichRelease(name),
  }));
  const unit = asked.unit === null ? [] : [{ value: "u", label: faults.whichUnit(asked.unit) }];
  return (
    <div className="faults-which">
      <NativeSelect
        label={faults.which}
        value={asked.unit !== null ? "u" : asked.release !== null ? `r ${asked.release}` : ""}
        data={[{ value: "", label: faults.whichDraft }, ...names, ...unit]}
        onChange={({ currentTarget: { value } }) =>
          value !== "u" && choose({ unit: null, release: value.startsWith("r ") ? value.slice(2) : null })
        }
      />
      <form onSubmit={open}>
        <TextInput
          label={faults.serial}
          value={serial}
          onChange={(event) => setSerial(event.currentTarget.value)}
        />
        <Button type="submit" variant="default" disabled={serial.trim() === ""}>
          {faults.open}
        </Button>
      </form>
      <Button
        component="a"
        variant="default"
        download
        href={pathTo("faultPage", { book: bookId }, query)}
        title={faults.pageHelp}
      >
        {faults.pageTake}
      </Button>
    </div>
  );
}
