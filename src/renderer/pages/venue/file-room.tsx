import { useEffect, useState } from 'react';
import { muchLiesFree, roomWords } from '#shared/wording/file-room.ts';
import { Part } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { giveBackRoom, readAbout } from '../../desk/file-room.ts';

/** Which file all this lies in, and, where much of it lies free, the way to give that back. */
export const FileRoom = () => {
  const { about } = useDesk();
  const [working, setWorking] = useState(false);
  useEffect(() => void readAbout(), []);
  if (!about) return null;
  const { bytes, spare } = about.size;
  return (
    <Part title="The file">
      <p>
        {about.file} takes {roomWords(bytes)}, of which {roomWords(spare)} lie free.
      </p>
      {muchLiesFree(about.size) ? (
        <div className="row">
          <button
            type="button"
            disabled={working}
            onClick={() => {
              setWorking(true);
              void giveBackRoom().finally(() => setWorking(false));
            }}
          >
            Give {roomWords(spare)} back to the disk
          </button>
          <span>Nothing kept is changed. It takes a moment, and as much room again while it works.</span>
        </div>
      ) : (
        <p>There is nothing worth giving back.</p>
      )}
    </Part>
  );
};
