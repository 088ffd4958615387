import { pathTo, type ReleaseItem } from "@pinwright/contract";
import { IconDownload } from "@tabler/icons-react";
import { useEffect, useState } from "react";
import { call } from "../../../api/call.ts";
import { useWords } from "../../words.tsx";

/** Files that were made for a release: the one that faults are found with, and the like. */
export function ReleaseFiles({ book, release }: { readonly book: string; readonly release: string }) {
  const own = useWords().revisionsApp.list;
  const [files, setFiles] = useState<readonly ReleaseItem[]>([]);
  useEffect(() => {
    let wanted = true;
    call("releaseItems", { parts: { book, release } }).then(
      (items) => wanted && setFiles(items.filter(({ kind }) => kind === "file")),
      () => undefined,
    );
    return () => {
      wanted = false;
    };
  }, [book, release]);
  const names: Readonly<Record<string, string>> = own.file;
  return files.map(({ id }) => (
    <a key={id} href={pathTo("releaseFile", { book, release, file: id })} download={id}>
      <IconDownload size={16} aria-hidden /> {names[id] ?? id}
    </a>
  ));
}
