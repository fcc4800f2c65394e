import { To } from '../../parts/to.tsx';

const PLACES = [
  { href: '/manual', text: 'The manual' },
  { href: '/methods/record', text: 'How hours are counted' },
  { href: '/methods/directive', text: 'How a directive is held against a part' },
  { href: '/methods/outlook', text: 'How a date is found' },
  { href: '/methods/usage', text: 'How hard flying works a wing' },
  { href: '/methods/growth', text: 'How a crack would grow' },
  { href: '/refusals', text: 'What the program refuses' },
];

/** What there is to read about the program itself. */
export function ToRead() {
  return (
    <nav className="to-read no-print" aria-label="To read">
      {PLACES.map((p) => (
        <To key={p.href} href={p.href}>
          {p.text}
        </To>
      ))}
    </nav>
  );
}
