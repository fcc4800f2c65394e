import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { aircraftOf, commit, type Mapping, preview, type ReadFile, type Target } from '../../api/import.ts';
import { useSheet } from '../../api/sheets.ts';
import { BusyButton } from '../../parts/busy-button.tsx';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { valuesOf } from '../aircraft/forms/read.ts';
import { mappingOf } from './mapping.ts';
import { MappingFields } from './mapping-fields.tsx';
import { PreviewView } from './preview-view.tsx';
import { Progress } from './progress.tsx';
import { TargetFields, targetOf } from './target-fields.tsx';

interface Asked {
  readonly mapping: Mapping;
  readonly aircraft: Target;
}

export function MapAndPreview({ shop, file }: { shop: string; file: ReadFile }) {
  const list = useSheet(shop, ['fleet']);
  const [chosen, setChosen] = useState('');
  const [, go] = useLocation();
  const queries = useQueryClient();
  const look = useMutation({
    mutationFn: (asked: Asked) => preview(shop, file.importId, asked.mapping, asked.aircraft),
  });
  const write = useMutation({
    mutationFn: (asked: Asked) => commit(shop, file.importId, asked.mapping, asked.aircraft),
    onSuccess: async ({ aircraft }) => {
      await queries.invalidateQueries();
      go(`/${shop}/aircraft/${encodeURIComponent(aircraft)}`);
    },
  });
  const forget = () => {
    look.reset();
    write.reset();
  };
  return (
    <>
      <form
        onChange={forget}
        onSubmit={(e) => {
          e.preventDefault();
          const form = e.currentTarget;
          look.mutate({ mapping: mappingOf(form, file.mapping), aircraft: targetOf(valuesOf(form)) });
        }}
      >
        <p className="because" role="status">
          {file.fileName} is read.{' '}
          {file.remembered ? 'A file of this shape was read before: its columns are known.' : ''}
        </p>
        <MappingFields file={file} />
        <TargetFields aircraft={aircraftOf(list.data, shop)} chosen={chosen} choose={setChosen} />
        <ErrorNotice error={look.error} />
        <div className="actions">
          <BusyButton className={look.data ? '' : 'first'} busy={look.isPending}>
            {look.isPending ? 'Reading every row ...' : 'Show every row'}
          </BusyButton>
        </div>
      </form>
      {look.isPending ? <Progress part={null} what="Reading every row" /> : null}
      {look.data ? (
        <PreviewView
          preview={look.data}
          header={file.header}
          writing={write.isPending}
          error={write.error}
          write={() => look.variables && write.mutate(look.variables)}
        />
      ) : null}
    </>
  );
}
