package spotline.run.project;

import java.time.OffsetDateTime;

/**
 * Who has a project open to write. The caller knows and has the clock.
 *
 * @param process the system's number of the process
 */
public record Writer(String who, String host, long process, OffsetDateTime since) {}
