/** What stands above every page: the mark of invented data, that the program is gone, that the clock is behind. */
export function PageNotices({
  invented,
  gone,
  clock,
}: {
  invented: boolean;
  gone: boolean;
  clock?: string | undefined;
}) {
  return (
    <>
      {invented ? <p className="invented">Invented demonstration data</p> : null}
      {gone ? (
        <div className="notice" role="alert">
          <p>
            <strong>Sparwright does not answer: what this page shows may be old.</strong> Start it again with npm start;
            the page notices by itself.
          </p>
        </div>
      ) : null}
      {clock ? (
        <div className="notice" role="status">
          <p>{clock}</p>
        </div>
      ) : null}
    </>
  );
}
