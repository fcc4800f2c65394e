import { useRef, useState } from 'react';

/** A place to drop one file on, and a button that does the same by keyboard. */
export function DropZone({ take, disabled }: { take: (file: File) => void; disabled: boolean }) {
  const [over, setOver] = useState(false);
  const input = useRef<HTMLInputElement>(null);
  return (
    <section
      className={over ? 'drop over' : 'drop'}
      aria-label="Logbook file"
      onDragOver={(e) => {
        e.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(e) => {
        e.preventDefault();
        setOver(false);
        const file = e.dataTransfer.files[0];
        if (file && !disabled) take(file);
      }}
    >
      <p>Drop an XLSX or CSV file here, with its columns in any order.</p>
      <input
        ref={input}
        type="file"
        className="hidden-text"
        tabIndex={-1}
        aria-label="Logbook file"
        accept=".xlsx,.xlsm,.csv,.tsv,.txt"
        onChange={(e) => {
          const file = e.target.files?.[0];
          if (file) take(file);
          e.target.value = '';
        }}
      />
      <button type="button" className="first" disabled={disabled} onClick={() => input.current?.click()}>
        Choose a file
      </button>
      <p className="hint">Nothing is written before you have seen every row. At most 20 MB.</p>
    </section>
  );
}
