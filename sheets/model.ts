import type { Bounds, Day, Evidence, Known, Step, WorkingUnit } from '../engine/index.ts';

/**
 * A page as data, before anyone decides whether it is a screen, a terminal or paper.
 * Cells are typed, so that sorting, files and units of display come free. Faces draw; they compute nothing.
 */

/** A piece of a sentence. `figure` spans carry the accent; `text` is already in the reader's units. */
export interface Span {
  readonly text: string;
  readonly figure?: boolean;
}

export type Cell =
  | {
      readonly is: 'quantity';
      readonly value: number | Bounds;
      readonly unit: string;
      readonly places: number;
      readonly text: string;
      readonly small?: string;
    }
  | { readonly is: 'day'; readonly day: Day; readonly text: string }
  | { readonly is: 'text'; readonly text: string; readonly small?: string }
  | {
      readonly is: 'standing';
      readonly worst: string;
      readonly best: string;
      readonly act: boolean;
      readonly text: string;
      readonly small?: string;
    }
  | { readonly is: 'link'; readonly text: string; readonly href: string }
  /** The due line: a short ruler from today over the next ten years. Positions run from 0 (today) to 1. */
  | { readonly is: 'due-line'; readonly marks: readonly DueMark[]; readonly text: string }
  | { readonly is: 'nothing' };

export interface DueMark {
  readonly kind: 'tick' | 'range' | 'overdue';
  readonly from: number;
  readonly to: number;
  readonly treatAs: boolean;
}

export interface Column {
  readonly key: string;
  readonly title: string;
  readonly unit?: string;
  readonly align: 'left' | 'right';
}

/** Rows or cards that stand one after the other and are folded together on a screen; paper and files show all. */
export interface Fold {
  readonly title: string;
  /** "23 steps, 4 done" */
  readonly note: string;
  /** How many rows or cards, beginning where the fold before it ends. */
  readonly count: number;
  /** What a reader looks for is in it. */
  readonly open: boolean;
}
export interface TableBlock {
  readonly block: 'table';
  readonly title: string;
  readonly columns: readonly Column[];
  readonly rows: readonly {
    readonly id: string;
    readonly cells: Readonly<Record<string, Cell>>;
    readonly working?: readonly ShownStep[];
    /** What a search finds besides the words of the cells. */
    readonly words?: string;
    /** Every day on which something of this row falls due, on the worse side; without it, the days of its cells count. */
    readonly days?: readonly Day[];
  }[];
  readonly empty: string;
  /** Other pages link to its rows by their id. */
  readonly linked?: true;
  /** Long words in few columns: it stands over the whole width of a page. */
  readonly wide?: true;
  /** All its rows in folds; a table that a reader sorts is not folded. */
  readonly folds?: readonly Fold[];
}
export interface KeyValueBlock {
  readonly block: 'key-value';
  readonly title: string;
  readonly pairs: readonly { readonly key: string; readonly cell: Cell }[];
}
export interface FindingsBlock {
  readonly block: 'findings';
  readonly title: string;
  readonly findings: readonly {
    readonly code: string;
    readonly text: string;
    readonly entries: readonly string[];
    readonly remedy: string;
  }[];
  readonly empty: string;
}
export interface PictureBlock {
  readonly block: 'picture';
  readonly title: string;
  readonly scene: Scene;
  /** Its table is data of its own, and stands in files. */
  readonly inFiles?: true;
}
export interface ProseBlock {
  readonly block: 'prose';
  readonly title: string;
  readonly paragraphs: readonly string[];
  readonly list?: readonly string[];
}
/** One thing to do on a card, with its own box to tick. */
export interface CardStep {
  readonly id: string;
  readonly title: string;
  /** Fasteners and their size, tools, persons, time: one short line each. */
  readonly facts: readonly string[];
  /** "25 Nov 2026, M. Orne", where it is done. */
  readonly done?: string;
}
/** A work card: one step, or a few that belong together. */
export interface Card {
  readonly id: string;
  /** "card 3 of 41" */
  readonly number: string;
  readonly stage: string;
  readonly title: string;
  /** On a gate: what must not go on before it is signed. */
  readonly stop?: string;
  /** What must be off or done first. */
  readonly first: string;
  readonly steps: readonly CardStep[];
  /** What the picture of the block shows on this card; null where nothing of it is to be seen. */
  readonly shown: Shown | null;
  /** Lines to sign, each by its words: "Date and initials". */
  readonly signs: readonly string[];
}
/** Cards for the floor. They share one picture; each says what of it is off, and what comes off next. */
export interface CardsBlock {
  readonly block: 'cards';
  readonly title: string;
  readonly scene: Scene | null;
  readonly cards: readonly Card[];
  /** All cards in folds. */
  readonly folds?: readonly Fold[];
  /** Every step as a row, for files. */
  readonly table: TableBlock;
  readonly empty: string;
}
export type Block = TableBlock | KeyValueBlock | FindingsBlock | PictureBlock | ProseBlock | CardsBlock;

/** How a thing of a picture is seen: taken off, its fasteners out, clipped and not riveted, coming off on this plan, next. */
export type Seen = 'off' | 'open' | 'clipped' | 'comes-off' | 'next';
/** A state of a picture: how each of its things is seen, by the id that its marks carry. What is not named is as drawn. */
export interface Shown {
  readonly seen: Readonly<Record<string, Seen>>;
  /** Names on leader lines, only of what is next. */
  readonly labels: readonly Mark[];
  readonly description: string;
  /** As much of the height of the picture as this state needs: below it is nothing. */
  readonly height?: number;
}

/** Ink of a stroke, text or fill: names of the look, never colours. */
export type Ink = 'ink' | 'soft' | 'line' | 'hair' | 'dye' | 'dye-soft' | 'sheet' | 'paper' | 'none' | 'hatch';

/** A mark may belong to a thing that a state of the picture names: `part:tank-left`, `join:j-nose-upper`. */
export type Mark = (
  | {
      readonly is: 'path';
      readonly d: string;
      readonly stroke: Ink;
      readonly fill: Ink;
      readonly width: number;
      readonly dash?: string;
      readonly title?: string;
    }
  | {
      readonly is: 'rect';
      readonly x: number;
      readonly y: number;
      readonly w: number;
      readonly h: number;
      readonly stroke: Ink;
      readonly fill: Ink;
      readonly width: number;
      readonly title?: string;
    }
  | {
      readonly is: 'circle';
      readonly x: number;
      readonly y: number;
      readonly r: number;
      readonly stroke: Ink;
      readonly fill: Ink;
      readonly width: number;
      readonly title?: string;
    }
  | {
      readonly is: 'text';
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly ink: Ink;
      readonly size: number;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly bold?: boolean;
    }
) & { readonly id?: string };

/** Scene data: one component in web/ and one renderer in documents/ draw it. y runs down. */
export interface Scene {
  readonly title: string;
  readonly description: string;
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
  /** The same content as a table, one key away. */
  readonly table?: TableBlock;
  /** Stretches from left to right that a reader can choose. */
  readonly zones?: readonly Zone[];
}

/** A stretch of a picture with the days it stands for; null where it runs on without end. */
export interface Zone {
  readonly key: string;
  /** "2027: 12 aircraft fall due" */
  readonly text: string;
  readonly x: number;
  readonly w: number;
  readonly from: Day | null;
  readonly to: Day | null;
}

/** A working step in the reader's units. */
export interface ShownStep {
  readonly symbol: string;
  readonly meaning: string;
  readonly formula: string;
  readonly value: string;
  readonly source: string;
  readonly entries: readonly string[];
}
export type { Step, WorkingUnit };

/** The ruled block on top of a page and at the foot of a paper. */
export interface TitleBlock {
  readonly fields: readonly { readonly label: string; readonly value: string; readonly small?: string }[];
}

export interface AskedSpan {
  readonly from: Day;
  readonly to: Day;
  readonly others: readonly { readonly text: string; readonly from: Day; readonly to: Day }[];
}

export interface Sheet {
  readonly word: string;
  readonly title: string;
  readonly titleBlock: TitleBlock;
  readonly subject: string;
  readonly day: Day;
  /** One sentence that a person could read out on the telephone. */
  readonly answer: readonly Span[];
  /** One line of why. */
  readonly because: string;
  /** The page that answers what this one does not. */
  readonly see?: { readonly text: string; readonly href: string };
  readonly blocks: readonly Block[];
  readonly working: readonly ShownStep[];
  readonly warnings: readonly string[];
  readonly caution?: string;
  readonly provenance: { readonly known: Known; readonly evidence: Evidence; readonly invented: boolean };
  /** Under which its working is kept. */
  readonly number?: string;
  /** The days that the page asks about, where it asks about a span, and others that are often wanted. */
  readonly span?: AskedSpan;
  /** What is still being computed, as a sentence; absent when all of it is. */
  readonly computing?: string;
  /** Upright and in larger type on paper, for a reader who is not of the trade; else across. */
  readonly paper?: 'upright';
}
