/** Inside this room only: this record, or this question, needs the whole way. Never reaches a caller. */
export class NotPlain extends Error {}
