import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Briefing } from '../../../core/briefing/briefing.ts';
import type { Paper } from '../../../core/briefing/papers.ts';
import { BriefingSheet } from '../../briefing/briefing-sheet.tsx';
import { download } from '../../state/download.ts';
import { printPage } from '../print-page.tsx';
import { usePrint } from '../use-print.ts';

const fetchHtml = () => import('../../briefing/briefing-html.tsx');

interface Props {
  readonly briefing: Briefing;
  readonly paper: Paper;
}

/** What can be taken along: a page, or paper. */
export function BriefButtons({ briefing, paper }: Props) {
  const [isBusy, setBusy] = useState(false);
  useEffect(() => {
    // So that it can be saved also when the host was ended.
    fetchHtml().catch(() => {});
  }, []);
  const save = async () => {
    setBusy(true);
    try {
      const { briefingHtml } = await fetchHtml();
      const text = briefingHtml(briefing, paper);
      download(briefing.facility.name, { ending: 'briefing.html', type: 'text/html', text });
    } finally {
      setBusy(false);
    }
  };
  const print = () => printPage(<BriefingSheet briefing={briefing} paper={paper} />);
  usePrint(print);
  return (
    <div className="row" role="group" aria-label="Take along">
      <Button className="button primary" onPress={print}>
        Print
      </Button>
      <Button className="button" isDisabled={isBusy} onPress={() => void save()}>
        Save the page
      </Button>
    </div>
  );
}
