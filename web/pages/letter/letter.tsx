import { useMutation } from '@tanstack/react-query';
import { Link } from 'wouter';
import { post } from '../../api/client.ts';
import { useSheet } from '../../api/sheets.ts';
import { shopPath } from '../../api/shops.ts';
import { BusyButton } from '../../parts/busy-button.tsx';
import { ErrorNotice } from '../../parts/error-notice.tsx';
import { Loaded } from '../../parts/loading.tsx';
import { Page } from '../../parts/page.tsx';
import { LetterView } from './letter-view.tsx';

interface Kept {
  readonly number: string;
  readonly pdf: string;
}

export function LetterPage({ shop, aircraft, directive }: { shop: string; aircraft: string; directive: string }) {
  const sheet = useSheet(shop, ['letters', 'preview'], { aircraft, directive });
  const keep = useMutation({
    mutationFn: () => post<Kept>(shopPath(shop, 'letters'), { aircraft, directive }),
  });
  return (
    <Page shop={shop} title={`Letter on ${directive}`} aircraft={{ id: aircraft, name: 'Back to the aircraft' }}>
      <div className="actions no-print">
        <BusyButton type="button" className="first" busy={keep.isPending || !sheet.data} onClick={() => keep.mutate()}>
          {keep.isPending ? 'Keeping the letter ...' : 'Keep and print'}
        </BusyButton>
        <Link className="button" href={`/${shop}/aircraft/${encodeURIComponent(aircraft)}`}>
          Back to the aircraft
        </Link>
        <span role="status">
          {keep.data ? (
            <>
              Kept under {keep.data.number}: <a href={keep.data.pdf}>the letter as PDF</a>
            </>
          ) : null}
        </span>
      </div>
      <ErrorNotice error={keep.error} />
      <Loaded query={sheet} what="Writing the letter">
        {(s) => <LetterView sheet={s} />}
      </Loaded>
    </Page>
  );
}
