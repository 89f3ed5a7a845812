package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PointerTest {
  private static final Json INNER =
      new Json.Fields(
          Map.of(
              "a/b", new Json.Number("1"), "m~n", new Json.Number("2"), "", new Json.Number("3")));
  private static final Json VALUE =
      new Json.Fields(
          Map.of("in", INNER, "list", new Json.Items(List.of(new Json.Text("x"), INNER))));

  @Test
  void aPointerLeadsThroughObjectsAndArrays() {
    assertThat(Pointer.parse("/in/a~1b").in(VALUE)).contains(new Json.Number("1"));
    assertThat(Pointer.parse("/in/m~0n").in(VALUE)).contains(new Json.Number("2"));
    assertThat(Pointer.parse("/in/").in(VALUE)).contains(new Json.Number("3"));
    assertThat(Pointer.parse("/list/0").in(VALUE)).contains(new Json.Text("x"));
    assertThat(Pointer.parse("/list/1/").in(VALUE)).contains(new Json.Number("3"));
  }

  @Test
  void aPointerToNothingIsEmpty() {
    for (String text :
        List.of("/x", "/in/a", "/list/2", "/list/00", "/list/-", "/list/01", "/list/0/y")) {
      assertThat(Pointer.parse(text).in(VALUE)).as(text).isEmpty();
    }
  }

  @Test
  void escapesAreReadOnce() {
    assertThat(Pointer.parse("/~01").tokens()).containsExactly("~1");
  }

  @Test
  void anotherFormIsRefused() {
    assertThatThrownBy(() -> Pointer.parse("peak")).hasMessage("\"peak\" does not begin with /");
    assertThatThrownBy(() -> Pointer.parse("/a~2"))
        .hasMessage("\"/a~2\" has a ~ without 0 or 1 after it");
    assertThatThrownBy(() -> Pointer.parse("/~"))
        .hasMessage("\"/~\" has a ~ without 0 or 1 after it");
  }
}
