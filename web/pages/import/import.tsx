import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { type ReadFile, readFile, readSheet } from '../../api/import.ts';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Select } from '../../parts/field.tsx';
import { Page } from '../../parts/page.tsx';
import { DropZone } from './drop-zone.tsx';
import { MapAndPreview } from './map-and-preview.tsx';
import { Progress } from './progress.tsx';

/** A logbook in three steps on one page: the file, what its columns are, every row before anything is written. */
export function ImportPage({ shop }: { shop: string }) {
  const [part, setPart] = useState<number | null>(0);
  const read = useMutation<ReadFile, unknown, File>({ mutationFn: (file) => readFile(shop, file, setPart) });
  const turned = useMutation<ReadFile, unknown, string>({
    mutationFn: (sheet) => readSheet(shop, read.data?.importId ?? '', sheet),
  });
  const file = turned.data ?? read.data;
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
          turned.reset();
          read.mutate(file);
        }}
      />
      {read.isPending ? <Progress part={part} what={part === null ? 'Reading the file' : 'Sending the file'} /> : null}
      <ErrorNotice error={read.error ?? turned.error} />
      {read.data && file && file.sheets.length > 1 ? (
        <div className="fields">
          <Select
            label="Sheet of the file"
            name="sheet"
            options={file.sheets.map((s) => ({ value: s, text: s }))}
            value={file.mapping.sheet ?? ''}
            set={(sheet) => turned.mutate(sheet)}
          />
        </div>
      ) : null}
      {read.data && file ? (
        <MapAndPreview key={`${file.importId} ${file.mapping.sheet}`} shop={shop} file={file} />
      ) : null}
    </Page>
  );
}
