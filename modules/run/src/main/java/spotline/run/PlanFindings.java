package spotline.run;

import java.util.List;
import java.util.Optional;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.holder.HolderPlan;
import spotline.holder.HolderTemplate;
import spotline.holder.HolderTemplates;
import spotline.holder.check.PlanCheck;

/** The mounting checks of a plan whose files may lie anywhere. */
public final class PlanFindings {
    private PlanFindings() {}

    /** Errors: {@link ReadException} when the holder template cannot be read. */
    public static List<Finding> of(HolderPlan plan, InputFiles inputs) throws ReadException {
        Optional<String> name = plan.file().holderTemplate();
        Optional<HolderTemplate> template = Optional.empty();
        if (name.isPresent()) {
            template = Optional.of(
                    HolderTemplates.SHIPPED.contains(name.get())
                            ? HolderTemplates.shipped(name.get())
                            : HolderTemplates.read(inputs.path(name.get())));
        }
        return PlanCheck.ofLoad(plan, template);
    }
}
