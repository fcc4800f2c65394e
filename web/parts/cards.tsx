import { useId } from 'react';
import type { Card, CardsBlock } from '../../sheets/model.ts';
import { sceneShown } from '../../sheets/scenes/shown.ts';
import { FoldButton, useFolds } from './fold.tsx';
import { Picture } from './picture.tsx';

/** Work cards as they are printed: what to do, what of the wing is off, what comes off next, where to sign. */
export function Cards({ block }: { block: CardsBlock }) {
  if (!block.cards.length) return <p>{block.empty}</p>;
  return (
    <div className="cards">
      <h2>{block.title}</h2>
      {block.folds ? (
        <FoldedCards block={block} folds={block.folds} />
      ) : (
        block.cards.map((card) => <CardView key={card.id} card={card} scene={block.scene} level={3} />)
      )}
    </div>
  );
}
/** Cards by stage: the stage with the next step stands open, paper shows all. */
function FoldedCards({ block, folds }: { block: CardsBlock; folds: NonNullable<CardsBlock['folds']> }) {
  const id = useId();
  const all = useFolds(
    folds,
    block.cards.map((c) => c.id),
  );
  return all.map(({ fold, key, begin, end, open, turn }, i) => (
    <section key={key} className={open ? undefined : 'folded'}>
      <h3 className="fold-line">
        <FoldButton fold={fold} open={open} controls={`${id}-${i}`} turn={turn} />
      </h3>
      <div id={`${id}-${i}`}>
        {block.cards.slice(begin, end).map((card) => (
          <CardView key={card.id} card={card} scene={block.scene} level={4} />
        ))}
      </div>
    </section>
  ));
}
function CardView({ card, scene, level }: { card: Card; scene: CardsBlock['scene']; level: 3 | 4 }) {
  const Title = level === 3 ? 'h3' : 'h4';
  return (
    <article className={card.stop ? 'card stop' : 'card'} id={card.id}>
      <p className="small">
        {card.number}, {card.stage}
      </p>
      <Title>{card.title}</Title>
      {card.stop ? <p className="strong">{card.stop}</p> : null}
      {scene && card.shown ? (
        <Picture
          level={3}
          block={{ block: 'picture', title: 'What comes next', scene: sceneShown(scene, card.shown, { cut: true }) }}
        />
      ) : null}
      {card.first ? <p>{card.first}</p> : null}
      <ol>
        {card.steps.map((s) => (
          <li key={s.id}>
            {s.title}
            <span className="small"> {s.facts.join('; ')}</span>
            {s.done ? <span className="small"> ({s.done})</span> : null}
          </li>
        ))}
      </ol>
      {card.signs.map((words) => (
        <p className="sign" key={words}>
          {words}
        </p>
      ))}
    </article>
  );
}
