package spotline.run;

import java.util.List;
import spotline.core.Finding;

/** A finding that explains others: what is behind the followers is said by the leader. */
public record Led(Finding leader, List<Finding> followers) {
    public Led {
        followers = List.copyOf(followers);
    }
}
