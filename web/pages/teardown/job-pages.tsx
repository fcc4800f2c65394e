import { Link } from 'wouter';
import { ownPage } from '../../api/kept-at.ts';

export const JOB_PAGES = ['plan', 'schedule', 'shopping', 'quote', 'cards'] as const;
export type JobPageName = (typeof JOB_PAGES)[number];
const TEXT: Readonly<Record<JobPageName | 'wing', string>> = {
  plan: 'Plan',
  schedule: 'Who does what when',
  shopping: 'Shopping list',
  quote: 'Quote',
  cards: 'Work cards',
  wing: 'The wing, step by step',
};

/** From one page of a job to the others. */
export function JobPages({ shop, name, here }: { shop: string; name: string; here: JobPageName | 'wing' }) {
  const own = ownPage(shop, 'teardown', name);
  return (
    <nav className="job-pages no-print" aria-label="Pages of this job">
      <ul>
        {[...JOB_PAGES, 'wing' as const].map((page) => (
          <li key={page}>
            <Link href={page === 'plan' ? own : `${own}/${page}`} aria-current={page === here ? 'page' : undefined}>
              {TEXT[page]}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
