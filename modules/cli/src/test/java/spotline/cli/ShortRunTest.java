package spotline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.lang.management.ManagementFactory;
import javax.management.MBeanServer;
import javax.management.ObjectName;
import org.junit.jupiter.api.Test;

class ShortRunTest {
    @Test
    void theMachineTakesTheRequest() throws Exception {
        MBeanServer server = ManagementFactory.getPlatformMBeanServer();
        ObjectName commands = new ObjectName("com.sun.management:type=DiagnosticCommand");
        assumeThat(server.isRegistered(commands)).isTrue();
        try {
            assertThat(ShortRun.ask()).isTrue();
            String inForce = String.valueOf(server.invoke(commands, "compilerDirectivesPrint", null, null));
            String ours = inForce.substring(0, inForce.indexOf("Directive: (default)"));
            assertThat(ours.replaceAll("\\s+", " ")).containsPattern("c2 directives: [^=]*?Exclude:true");
        } finally {
            // The other tests go on with the compiler.
            server.invoke(commands, "compilerDirectivesClear", null, null);
        }
    }
}
