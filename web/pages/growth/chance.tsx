import { useState } from 'react';
import type { Sheet } from '../../../sheets/model.ts';
import type { ChanceSource } from '../../api/work.ts';
import { SheetView } from '../../parts/sheet-view.tsx';
import { useUnits } from '../../parts/write/units.ts';
import { ChanceAsking } from './chance-asking.tsx';
import { useDrawing } from './use-drawing.ts';

/** Asks for lives with scatter of a source, and hands on the sheet when they are drawn; null while there is none. */
function ChanceForm({
  shop,
  source,
  onSheet,
}: {
  shop: string;
  source: ChanceSource;
  onSheet: (sheet: Sheet | null) => void;
}) {
  const units = useUnits();
  const { drawing, ask, stop } = useDrawing(shop, onSheet);
  return <ChanceAsking drawing={drawing} ask={(wanted) => ask({ ...source, ...wanted, units })} stop={stop} />;
}

function Asked({ shop, source }: { shop: string; source: ChanceSource }) {
  const [sheet, setSheet] = useState<Sheet | null>(null);
  return (
    <>
      <ChanceForm shop={shop} source={source} onSheet={setSheet} />
      {sheet ? <SheetView sheet={sheet} level={2} /> : null}
    </>
  );
}

/** The question and its answer below each other; another source, or other units, begin anew. */
export function WithScatter({ shop, source }: { shop: string; source: ChanceSource }) {
  const units = useUnits();
  return <Asked key={`${units} ${JSON.stringify(source)}`} shop={shop} source={source} />;
}
