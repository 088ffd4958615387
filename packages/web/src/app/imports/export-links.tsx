import { Button } from "@mantine/core";
import { pathTo } from "@pinwright/contract";
import { IconDownload } from "@tabler/icons-react";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";

/** The open book as a file. */
export function ExportLinks() {
  const words = useWords().imports.export;
  const desk = useDesk();
  return (
    <section className="imports-part">
      <h3>{words.title}</h3>
      <p className="dim">{words.about}</p>
      <div className="imports-buttons">
        {(["zip", "xlsx"] as const).map((format) => (
          <Button
            key={format}
            component="a"
            href={pathTo("exportBook", { book: desk.bookId }, { format })}
            download
            variant="default"
            leftSection={<IconDownload size={16} />}
          >
            {words[format]}
          </Button>
        ))}
      </div>
    </section>
  );
}
