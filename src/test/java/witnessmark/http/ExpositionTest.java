package witnessmark.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The reader that judges the page of figures must itself refuse what is wrong. */
class ExpositionTest {
  @Test
  void aPageOfTheFormatIsRead() {
    Exposition page =
        Exposition.read(
            "# HELP a b\n# TYPE a counter\na{x=\"1\"} 2\na{x=\"\\\"\"} +Inf\n"
                + "# TYPE h histogram\nh_bucket{le=\"1\"} 1\nh_bucket{le=\"+Inf\"} 2\nh_sum 3\n"
                + "h_count 2\n");
    assertThat(page.value("a{x=1}")).isEqualTo(2);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a 1",
        "# TYPE a counter\na{x=\"1\"} 2\na{x=\"1\"} 2\n",
        "# TYPE a counter\na{x=1} 2\n",
        "# TYPE a counter\nb 2\n",
        "# TYPE a number\na 2\n",
        "# TYPE a counter\na 2\n# TYPE b counter\nb 1\n# TYPE a counter\n",
        "# TYPE a counter\n\na 2\n",
        "# TYPE a counter\na 2 x\n",
        "# TYPE h histogram\nh_bucket{le=\"1\"} 3\nh_bucket{le=\"+Inf\"} 2\nh_sum 3\nh_count 2\n",
        "# TYPE h histogram\nh_bucket{le=\"+Inf\"} 2\nh_sum 3\nh_count 3\n",
      })
  void aPageThatIsNotOfTheFormatIsRefused(String page) {
    assertThatThrownBy(() -> Exposition.read(page)).isInstanceOf(AssertionError.class);
  }
}
