import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Progress } from '../../../core/progress/progress.ts';
import { progressCsv } from '../../../core/progress/progress-csv.ts';
import { ProgressBody } from '../../progress-page/progress-body.tsx';
import { download } from '../../state/download.ts';
import { printPage } from '../print-page.tsx';
import { usePrint } from '../use-print.ts';

const fetchHtml = () => import('../../progress-page/progress-html.tsx');

/** What can be taken away from a student's record: a page, its figures, or paper. */
export function ReportButtons({ progress }: { readonly progress: Progress }) {
  const [isBusy, setBusy] = useState(false);
  useEffect(() => {
    // So that it can be saved also when the host was ended.
    fetchHtml().catch(() => {});
  }, []);
  const savePage = async () => {
    setBusy(true);
    try {
      const { progressHtml } = await fetchHtml();
      download(progress.student, {
        ending: 'progress.html',
        type: 'text/html',
        text: progressHtml(progress),
      });
    } finally {
      setBusy(false);
    }
  };
  const saveTable = () =>
    download(progress.student, { ending: 'progress.csv', type: 'text/csv', text: progressCsv(progress) });
  const print = () => printPage(<ProgressBody progress={progress} />);
  usePrint(print);
  return (
    <div className="row" role="group" aria-label="Hand over">
      <Button className="button" isDisabled={isBusy} onPress={() => void savePage()}>
        Save the report
      </Button>
      <Button className="button" onPress={saveTable}>
        Save as CSV
      </Button>
      <Button className="button" onPress={print}>
        Print
      </Button>
    </div>
  );
}
