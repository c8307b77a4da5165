package spotline.bench;

/** (c) A survey of 1361 channels, twelve lines, 38 parameters. */
public class SurveyBench extends FitBench {
    public SurveyBench() {
        super(FitCase.survey());
    }
}
