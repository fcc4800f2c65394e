import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { type ReadFile, readFile } from '../../api/import.ts';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Page } from '../../parts/page.tsx';
import { DropZone } from './drop-zone.tsx';
import { MapAndPreview } from './map-and-preview.tsx';
import { Progress } from './progress.tsx';

/** A logbook in three steps on one page: the file, what its columns are, every row before anything is written. */
export function ImportPage({ shop }: { shop: string }) {
  const [part, setPart] = useState<number | null>(0);
  const read = useMutation<ReadFile, unknown, File>({ mutationFn: (file) => readFile(shop, file, setPart) });
  return (
    <Page shop={shop} title="Import a logbook">
      <h1 className="say">Drop the owner's logbook; see every row before it is written.</h1>
      <p className="because">
        Say once what each column is. The next file of the same shape is read the same way. All rows that are accepted
        are written, or none.
      </p>
      <DropZone
        disabled={read.isPending}
        take={(file) => {
          setPart(0);
          read.mutate(file);
        }}
      />
      {read.isPending ? <Progress part={part} what={part === null ? 'Reading the file' : 'Sending the file'} /> : null}
      <ErrorNotice error={read.error} />
      {read.data ? <MapAndPreview key={read.data.importId} shop={shop} file={read.data} /> : null}
    </Page>
  );
}
