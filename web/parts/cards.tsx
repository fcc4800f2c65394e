import type { Card, CardsBlock } from '../../sheets/model.ts';
import { sceneShown } from '../../sheets/scenes/shown.ts';
import { Picture } from './picture.tsx';

/** Work cards as they are printed: what to do, what of the wing is off, what comes off next, where to sign. */
export function Cards({ block }: { block: CardsBlock }) {
  if (!block.cards.length) return <p>{block.empty}</p>;
  return (
    <div className="cards">
      <h2>{block.title}</h2>
      {block.cards.map((card) => (
        <CardView key={card.id} card={card} scene={block.scene} />
      ))}
    </div>
  );
}
function CardView({ card, scene }: { card: Card; scene: CardsBlock['scene'] }) {
  return (
    <article className={card.stop ? 'card stop' : 'card'} id={card.id}>
      <p className="small">
        {card.number}, {card.stage}
      </p>
      <h3>{card.title}</h3>
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
