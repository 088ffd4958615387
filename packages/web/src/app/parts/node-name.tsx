import { usePick } from "../words.tsx";

/** What people call something, with its id below when that is not the same. */
export function NodeName({
  id,
  label,
  labelZh,
}: {
  readonly id: string;
  readonly label: string;
  readonly labelZh: string;
}) {
  const pick = usePick();
  const name = pick(label, labelZh);
  return (
    <>
      {name || id}
      {name !== "" && name !== id && <small>{id}</small>}
    </>
  );
}
