import { Button, FileButton } from "@mantine/core";
import { IconUpload } from "@tabler/icons-react";
import { type DragEvent, useState } from "react";
import { useWords } from "../words.tsx";

/** A place to choose a file, or to drop one on. */
export function FileDrop({
  busy,
  label,
  onFile,
}: {
  readonly busy: boolean;
  readonly label: string;
  readonly onFile: (file: File) => void;
}) {
  const words = useWords().imports.bring;
  const [over, setOver] = useState(false);
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    setOver(false);
    const [file] = event.dataTransfer.files;
    if (file !== undefined) onFile(file);
  };
  return (
    <section
      className="imports-drop"
      aria-label={label}
      data-over={over || undefined}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <FileButton accept=".zip,.xlsx,.csv,.tsv,.txt" onChange={(file) => file !== null && onFile(file)}>
        {(button) => (
          <Button {...button} loading={busy} leftSection={<IconUpload size={16} />}>
            {label}
          </Button>
        )}
      </FileButton>
      <span className="dim">{words.drop}</span>
    </section>
  );
}
