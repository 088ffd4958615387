import { TabHead } from "./tab-head.tsx";

export function LadderTab({ id: _ }: { readonly id: string | null }) {
  return <TabHead tab="ladder" />;
}
