import { Modal } from "@mantine/core";
import { useState } from "react";
import { ChooseSheets } from "../sheets/choose-sheets.tsx";
import { JobCard } from "../sheets/job-card.tsx";
import { useJobs } from "../sheets/use-jobs.ts";
import { useWords } from "../words.tsx";

/** Makes sheets of one harness and gives their files. */
export function PrintDialog({
  harnessId,
  name,
  onClose,
}: {
  readonly harnessId: string;
  readonly name: string;
  readonly onClose: () => void;
}) {
  const { harnesses, common } = useWords();
  const { jobs, make, cancel } = useJobs();
  const [asked, setAsked] = useState<readonly string[]>([]);
  return (
    <Modal
      opened
      onClose={onClose}
      title={harnesses.print.title(name)}
      size="xl"
      closeButtonProps={{ "aria-label": common.close }}
    >
      {jobs
        ?.filter((job) => asked.includes(job.id))
        .map((job) => (
          <JobCard key={job.id} job={job} open onCancel={() => cancel(job)} />
        ))}
      <ChooseSheets
        harnessIds={[harnessId]}
        onMake={async (wanted) => {
          const job = await make(wanted);
          setAsked((before) => [...before, job.id]);
        }}
      />
    </Modal>
  );
}
