package spotline.run.project;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;

/** A disk with room for a number of bytes. */
final class FullDisk implements Storage {
    private long room;

    FullDisk(long room) {
        this.room = room;
    }

    void makeRoom(long bytes) {
        room = bytes;
    }

    @Override
    public Target create(Path file) throws IOException {
        return new Limited(DISK.create(file));
    }

    @Override
    public Target append(Path file) throws IOException {
        return new Limited(DISK.append(file));
    }

    private final class Limited implements Target {
        private final Target disk;

        Limited(Target disk) {
            this.disk = disk;
        }

        @Override
        public int write(ByteBuffer bytes) throws IOException {
            if (room == 0) throw new IOException("No space left on device");
            int n = (int) Math.min(room, bytes.remaining());
            ByteBuffer part = bytes.slice().limit(n);
            while (part.hasRemaining()) disk.write(part);
            bytes.position(bytes.position() + n);
            room -= n;
            return n;
        }

        @Override
        public void force() throws IOException {
            disk.force();
        }

        @Override
        public void cut(long length) throws IOException {
            disk.cut(length);
        }

        @Override
        public boolean isOpen() {
            return disk.isOpen();
        }

        @Override
        public void close() throws IOException {
            disk.close();
        }
    }
}
