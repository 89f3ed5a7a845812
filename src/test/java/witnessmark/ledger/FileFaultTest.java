package witnessmark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class FileFaultTest {
  @Test
  void theClassOrTheReasonIsPutInWords() {
    assertThat(FileFault.why(new NoSuchFileException("f"))).isEqualTo("there is no such file");
    assertThat(FileFault.why(new NoSuchFileException("no/where/f")))
        .isEqualTo("there is no directory no/where");
    assertThat(FileFault.why(new NoSuchFileException(null))).isEqualTo("there is no such file");
    assertThat(FileFault.why(new MalformedInputException(1))).isEqualTo("it is not UTF-8");
    assertThat(FileFault.why(new AccessDeniedException("f")))
        .isEqualTo("this user has no right to it");
    assertThat(FileFault.why(new FileAlreadyExistsException("f")))
        .isEqualTo("a file of that name is in the way");
    assertThat(FileFault.why(new FileSystemException("f", null, "Read-only file system")))
        .isEqualTo("read-only file system");
    assertThat(FileFault.why(new FileSystemException("f"))).isEqualTo("the system gives no reason");
    assertThat(FileFault.why(new IOException("Is a directory"))).isEqualTo("it is a directory");
    assertThat(FileFault.why(new IOException())).isEqualTo("the system gives no reason");
  }

  @Test
  void aFullDiskIsSaidAndTheFileWhereItIsKnown() {
    String room = "No space left on device";
    assertThat(FileFault.why(new IOException(room))).isEqualTo("there is no room left on the disk");
    assertThat(FileFault.beside(Path.of("d"), new FileSystemException("d/f", null, room)))
        .isEqualTo("d/f: there is no room left on the disk");
    assertThat(FileFault.beside(Path.of("d"), new NoSuchFileException("d")))
        .isEqualTo("there is no such file");
    assertThat(FileFault.beside(Path.of("d"), new IOException(room)))
        .isEqualTo("there is no room left on the disk");
  }
}
