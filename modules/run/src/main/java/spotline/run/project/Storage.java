package spotline.run.project;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.WritableByteChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Where bytes go on their way to a disk: a seam, so that a disk that fills up can be tried out. */
interface Storage {
    /** A file being written. */
    interface Target extends WritableByteChannel {
        /** Returns when all that was written is on the disk. */
        void force() throws IOException;

        /** Takes away all beyond a length. */
        void cut(long length) throws IOException;
    }

    /** An empty file, whatever stood there before. */
    Target create(Path file) throws IOException;

    /** The end of a file, which is made where it is missing. */
    Target append(Path file) throws IOException;

    Storage DISK = new Storage() {
        @Override
        public Target create(Path file) throws IOException {
            return new OnDisk(FileChannel.open(
                    file, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING, StandardOpenOption.WRITE));
        }

        @Override
        public Target append(Path file) throws IOException {
            return new OnDisk(FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.APPEND));
        }
    };

    /** A file of the system's own. */
    record OnDisk(FileChannel channel) implements Target {
        @Override
        public int write(ByteBuffer bytes) throws IOException {
            return channel.write(bytes);
        }

        @Override
        public void force() throws IOException {
            channel.force(true);
        }

        @Override
        public void cut(long length) throws IOException {
            channel.truncate(length);
        }

        @Override
        public boolean isOpen() {
            return channel.isOpen();
        }

        @Override
        public void close() throws IOException {
            channel.close();
        }
    }
}
