package witnessmark.config;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.toml.FaultsException;

class ConfigFaultsTest {
  private static final String BRIDGE = "[bridge]\nname = \"shop-1\"\n";
  private static final String BROKER =
      "[[mqtt]]\nname = \"shop\"\nurl = \"tcp://127.0.0.1:1883\"\n";
  private static final String LINE =
      "[[serial]]\nname = \"cable\"\nport = \"/dev/ttyUSB0\"\nstation = \"bench-1\"\n"
          + "profile = \"profiles/demo-line.toml\"\n";

  @TempDir private Path temp;
  private ConfigDirectory directory;

  @BeforeEach
  void everythingThatIsNamedExists() throws IOException {
    directory = new ConfigDirectory(temp);
  }

  /** Each fault as the person reads it, without the directory's own name. */
  private List<String> faults(String toml) {
    Throwable thrown = catchThrowable(() -> directory.read(toml));
    assertThat(thrown).as(toml).isInstanceOf(FaultsException.class);
    return thrown.getMessage().replace(temp + "/", "").lines().toList();
  }

  /** Keys in csv stand for lines: a comma in them would end the cell. */
  private static String lines(String text) {
    return text == null ? "" : text.replace(" / ", "\n") + "\n";
  }

  @Test
  void aFileWithoutABridgeOrAWrenchSaysBoth() {
    assertThat(faults(""))
        .containsExactly(
            "shop.toml:1:1: there is no [bridge]; begin with [bridge] and its name",
            "shop.toml:1:1: no wrench can be heard: there is neither [[mqtt]] nor [[serial]];"
                + " add at least one of them");
    assertThat(faults("bridge = 1\n" + BROKER))
        .containsExactly(
            "shop.toml:1:1: \"bridge\" is not a table; write a table",
            "shop.toml:1:1: there is no [bridge]; begin with [bridge] and its name");
  }

  @Test
  void whatIsNoTomlIsNamedWhereItBreaks() {
    assertThat(faults("[bridge\n"))
        .singleElement()
        .asString()
        .startsWith("shop.toml:1:8: ")
        .endsWith("; the file must be TOML 1.0");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "queue = 1000|1:1: bridge has no \"name\"; write 1 to 64 letters, digits, and . _ -",
        "name = \"shop 1\"|2:1: \"shop 1\" is no name; write 1 to 64 letters, digits, and . _ -",
        "name = \"..\"|2:1: \"..\" is no name; write 1 to 64 letters, digits, and . _ -",
        "name = 1|2:1: \"name\" is not a text in quotes; write a text in quotes",
        "name = \"s\" / queue = 15|3:1: queue 15 is out of range; 16 to 100000 is allowed",
        "name = \"s\" / queue = 100001|3:1: queue 100001 is out of range; 16 to 100000 is allowed",
        "name = \"s\" / queue = \"16\"|3:1: \"queue\" is not a whole number; write a whole number",
        "name = \"s\" / data = 1|3:1: \"data\" is not a text in quotes; write a text in quotes",
        "name = \"s\" / health-every = \"10\"|3:1: \"10\" is no length of time; write a number and"
            + " ms or s, e.g. \"10 s\", up to 3600 s",
        "name = \"s\" / health-every = \"0 s\"|3:1: \"0 s\" is no length of time; write a number"
            + " and ms or s, e.g. \"10 s\", up to 3600 s",
        "name = \"s\" / health-every = \"3601 s\"|3:1: \"3601 s\" is no length of time; write a"
            + " number and ms or s, e.g. \"10 s\", up to 3600 s",
        "name = \"s\" / keep-free = \"200 MiB\"|3:1: \"200 MiB\" is no amount of storage; write a"
            + " number and kB, MB or GB, e.g. \"200 MB\"",
        "name = \"s\" / quue = 16|3:1: unknown key \"quue\" in bridge; did you mean \"queue\"?",
      })
  void aFaultOfTheBridgeIsNamed(String keys, String fault) {
    assertThat(faults("[bridge]\n" + lines(keys) + BROKER)).containsExactly("shop.toml:" + fault);
  }

  @Test
  void anUnknownTableIsNamed() {
    assertThat(faults(BRIDGE + BROKER + "[seriall]\n"))
        .containsExactly(
            "shop.toml:6:1: unknown key \"seriall\" in the file; did you mean \"serial\"?");
    assertThat(faults(BRIDGE + "[mqtt]\nname = \"shop\"\n"))
        .containsExactly(
            "shop.toml:3:1: \"mqtt\" is not tables written [[mqtt]]; write tables written"
                + " [[mqtt]]");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "url = \"tcp://127.0.0.1:1883\"|3:1: mqtt has no \"name\"; write 1 to 64 letters, digits,"
            + " and . _ -",
        "name = \"shop\"|3:1: mqtt has no \"url\"; write e.g. \"tcp://127.0.0.1:1883\" or"
            + " \"ssl://host:8883\"",
        "name = \"a/b\" / url = \"tcp://127.0.0.1:1883\"|4:1: \"a/b\" is no name; write 1 to 64"
            + " letters, digits, and . _ -",
        "name = \"shop\" / url = \"127.0.0.1\"|5:1: a broker's url must be tcp://HOST:PORT or"
            + " ssl://HOST:PORT and nothing more; write e.g. \"tcp://127.0.0.1:1883\" or"
            + " \"ssl://host:8883\"",
        "name = \"shop\" / url = \"tcp://127.0.0.1:65536\"|5:1: port 65536 of the url is not from"
            + " 1 to 65535; write e.g. \"tcp://127.0.0.1:1883\" or \"ssl://host:8883\"",
        "name = \"shop\" / url = \"ssl://127.0.0.1:0\"|5:1: port 0 of the url is not from"
            + " 1 to 65535; write e.g. \"tcp://127.0.0.1:1883\" or \"ssl://host:8883\"",
      })
  void aFaultOfABrokersNameOrUrlIsNamed(String keys, String fault) {
    assertThat(faults(BRIDGE + "[[mqtt]]\n" + lines(keys))).containsExactly("shop.toml:" + fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "client-id = \"\"|6:1: client-id must be 1 to 64 printable characters without blanks at"
            + " the ends; write such a one, or leave client-id out",
        "subscribe = 1|6:1: \"subscribe\" is not true or false; write true or false",
        "publish = \"no\"|6:1: \"publish\" is not true or false; write true or false",
        "topic = \"x\"|6:1: unknown key \"topic\" in mqtt; allowed are ca-file, cert-file,"
            + " client-id, key-file, map, name, password-env, password-file, publish, stations,"
            + " subscribe, url, user",
        "stations = []|6:1: stations is an empty list; name at least one, or leave stations out",
        "stations = \"bench-1\"|6:1: \"stations\" is not a list of texts in quotes; write a list of"
            + " texts in quotes",
        "stations = [\"a/b\"]|6:13: \"a/b\" is no station's name; write 1 to 64 letters, digits, and"
            + " . _ -",
        "stations = [\"b\", \"b\"]|6:18: station \"b\" is named twice; name it once",
        "password-env = \"BROKER_PASSWORD\"|6:1: a password needs a user; add user = \"NAME\", as the"
            + " broker knows it",
        "password-file = \"broker-password.txt\"|6:1: a password needs a user; add user = \"NAME\","
            + " as the broker knows it",
        "user = \"u\" / password-env = \"EMPTY\"|7:1: EMPTY is empty; set it to the password",
        "user = \"u\" / password-file = \"empty.txt\"|7:1: empty.txt is empty; write the password"
            + " that the broker knows into it",
        "user = \"u\" / password-file = \"tls\"|7:1: tls cannot be read: it is a directory; name a"
            + " readable file; its path is relative to this file",
        "user = \"u\" / password-file = \"nodir/p\"|7:1: nodir/p cannot be read: there is no"
            + " directory nodir; name a readable file; its path is relative to this file",
        "user = \"u\" / password-file = \"latin.txt\"|7:1: latin.txt cannot be read: it is not"
            + " UTF-8; save it as UTF-8",
        "user = \"u\" / password-env = \"NOT_SET\"|7:1: the environment has no NOT_SET; set it, or"
            + " use password-file",
        "user = \"u\" / password-file = \"none.txt\"|7:1: none.txt cannot be read: there is no such"
            + " file; name a readable file; its path is relative to this file",
        "user = \"u\" / password-env = \"BROKER_PASSWORD\" / password-file ="
            + " \"broker-password.txt\"|7:1: there are two sources of the password; keep one of"
            + " them",
        "ca-file = \"tls/ca.pem\"|6:1: ca-file needs a url that begins with ssl://; write ssl:// and"
            + " the port that encrypts in url, or leave ca-file out",
      })
  void aFaultOfABrokersOtherKeysIsNamed(String keys, String fault) {
    assertThat(faults(BRIDGE + BROKER + lines(keys))).containsExactly("shop.toml:" + fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "ca-file = \"tls/none.pem\"|6:1: tls/none.pem cannot be read: there is no such file; name a"
            + " readable file; its path is relative to this file",
        "ca-file = \"tls\"|6:1: tls cannot be read: it is a directory; name a readable file; its path"
            + " is relative to this file",
        "cert-file = \"tls/none.pem\" / key-file = \"tls/shop-1.key\"|6:1: tls/none.pem cannot be"
            + " read: there is no such file; name a readable file; its path is relative to this file",
        "cert-file = \"tls/shop-1.pem\" / key-file = \"tls/none.key\"|7:1: tls/none.key cannot be"
            + " read: there is no such file; name a readable file; its path is relative to this file",
        "cert-file = \"tls/shop-1.pem\"|6:1: a client certificate and its key belong together; add"
            + " key-file, or leave both out",
        "key-file = \"tls/shop-1.key\"|6:1: a client certificate and its key belong together; add"
            + " cert-file, or leave both out",
      })
  void aFaultOfABrokersCertificatesIsNamed(String keys, String fault) {
    String broker = BROKER.replace("tcp://127.0.0.1:1883", "ssl://broker.example:8883");
    assertThat(faults(BRIDGE + broker + lines(keys))).containsExactly("shop.toml:" + fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "station = \"b\" / profile = \"profiles/nested-json.toml\"|6:1: map has no \"topic\"; name"
            + " the topic to read",
        "topic = \"a\" / profile = \"profiles/nested-json.toml\"|6:1: map has no \"station\"; name"
            + " the station it is for",
        "topic = \"a\" / station = \"b\"|6:1: map has no \"profile\"; name a profile file",
        "topic = \"a/+\" / station = \"b\" / profile = \"profiles/nested-json.toml\"|7:1: \"a/+\""
            + " has a wildcard; name the topic to read",
        "topic = \"a/#\" / station = \"b\" / profile = \"profiles/nested-json.toml\"|7:1: \"a/#\""
            + " has a wildcard; name the topic to read",
        "topic = \"\" / station = \"b\" / profile = \"profiles/nested-json.toml\"|7:1: topic \"\" is no"
            + " MQTT topic; name the topic to read",
        "topic = \"a\" / station = \"b c\" / profile = \"profiles/nested-json.toml\"|8:1: station"
            + " \"b c\" is not allowed; use 1 to 64 letters, digits, and . _ -; name the station"
            + " it is for",
        "topic = \"a\" / station = \"b\" / profile = \"none.toml\"|9:1: the profile none.toml"
            + " cannot be read: there is no such file; name a readable file; its path is relative to"
            + " this file",
        "topic = \"a\" / station = \"b\" / profile = \"profiles/nested-json.toml\" / qos = 1|10:1:"
            + " unknown key \"qos\" in map; allowed are profile, station, topic",
      })
  void aFaultOfAMappedTopicIsNamed(String keys, String fault) {
    assertThat(faults(BRIDGE + BROKER + "[[mqtt.map]]\n" + lines(keys)))
        .containsExactly("shop.toml:" + fault);
  }

  @Test
  void aMappedTopicIsOfOneOfTheStations() {
    assertThat(
            faults(
                BRIDGE
                    + BROKER
                    + "stations = [\"bench-1\"]\n[[mqtt.map]]\ntopic = \"a\"\nstation = \"bench-2\"\n"
                    + "profile = \"profiles/nested-json.toml\"\n"))
        .containsExactly(
            "shop.toml:7:1: station \"bench-2\" of topic \"a\" is not in stations; add it there");
  }

  @Test
  void aTopicIsMappedOnceABroker() {
    String map =
        "[[mqtt.map]]\ntopic = \"a\"\nstation = \"b\"\nprofile = \"profiles/nested-json.toml\"\n";
    assertThat(faults(BRIDGE + BROKER + map + map))
        .containsExactly("shop.toml:6:1: the topic \"a\" is mapped twice; map it once");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "name = \"cable\"|3:1: serial has no \"name\"; write 1 to 64 letters, digits, and . _ -",
        "port = \"/dev/ttyUSB0\"|3:1: serial has no \"port\"; write e.g. \"/dev/ttyUSB0\","
            + " \"usb-serial:A600XYZ\" or \"usb:0403:6001\"",
        "station = \"bench-1\"|3:1: serial has no \"station\"; name the station it is for",
        "profile = \"profiles/demo-line.toml\"|3:1: serial has no \"profile\"; name a profile file",
      })
  void aLineLacksNothing(String key, String fault) {
    assertThat(faults(BRIDGE + LINE.replace(key + "\n", ""))).containsExactly("shop.toml:" + fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"/dev/ttyUSB0\"|\"COM3\"|5:1: a serial port must be a path like /dev/ttyUSB0,"
            + " usb-serial:NUMBER, or usb:VENDOR:PRODUCT with four hexadecimal digits each; found"
            + " \"COM3\"; write e.g. \"/dev/ttyUSB0\", \"usb-serial:A600XYZ\" or \"usb:0403:6001\"",
        "\"bench-1\"|\"bench/1\"|6:1: station \"bench/1\" is not allowed; use 1 to 64 letters,"
            + " digits, and . _ -; name the station it is for",
        "\"profiles/demo-line.toml\"|\"none.toml\"|7:1: the profile none.toml cannot be read: there"
            + " is no such file; name a readable file; its path is relative to this file",
        "demo-line.toml|nested-json.toml|7:1: profile \"nested-json\" has no [frame], so a serial"
            + " line cannot use it; say in it how frames are cut",
      })
  void aFaultOfALineIsNamed(String good, String bad, String fault) {
    assertThat(faults(BRIDGE + LINE.replace(good, bad))).containsExactly("shop.toml:" + fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "baud = 49|8:1: baud 49 is out of range; 50 to 4000000 is allowed",
        "data-bits = 9|8:1: data-bits 9 is out of range; 7 to 8 is allowed",
        "stop-bits = 0|8:1: stop-bits 0 is out of range; 1 to 2 is allowed",
        "parity = \"mark\"|8:1: parity \"mark\" is unknown; write none, odd or even",
        "speed = 9600|8:1: unknown key \"speed\" in serial; allowed are baud, data-bits, name,"
            + " parity, port, profile, station, stop-bits",
      })
  void aFaultOfALinesSettingsIsNamed(String key, String fault) {
    assertThat(faults(BRIDGE + LINE + key + "\n")).containsExactly("shop.toml:" + fault);
  }

  @Test
  void linksOfOneNameAreNamedWhateverTheirKind() {
    assertThat(faults(BRIDGE + BROKER + LINE.replace("cable", "shop")))
        .containsExactly("shop.toml:7:1: the name \"shop\" is used twice; name it otherwise");
  }

  @Test
  void anIdThatTwoLongNamesMakeIsNamed() {
    String name = "n".repeat(60);
    assertThat(faults(BRIDGE + BROKER.replace("\"shop\"", "\"" + name + "\"")))
        .containsExactly(
            "shop.toml:4:1: the client-id witnessmark-BRIDGE-NAME must be 1 to 64 printable"
                + " characters without blanks at the ends; name another, shorter one with client-id");
  }

  @Test
  void aFileThatIsNotUtf8IsNamedAtTheByte() throws IOException {
    Files.write(directory.file(), (BRIDGE + "# f\u00fcr\n").getBytes(ISO_8859_1));
    assertThatThrownBy(() -> ConfigFile.read(directory.file(), Map.of()))
        .isInstanceOf(FaultsException.class)
        .hasMessage(
            directory.file() + ":3:4: the file is not UTF-8 from here on; save it as UTF-8");
    Files.write(directory.path("latin.toml"), "[profile]\n\u00fc".getBytes(ISO_8859_1));
    assertThat(faults(BRIDGE + LINE.replace("profiles/demo-line.toml", "latin.toml")))
        .containsExactly("latin.toml:2:1: the file is not UTF-8 from here on; save it as UTF-8");
  }

  @Test
  void aFaultOfAProfileIsNamedInTheProfile() throws IOException {
    Files.writeString(
        directory.path("profiles/bad.toml"),
        "[profile]\nname = \"bad\"\n[frame]\nend = \"\\n\"\n[message]\nform = \"morse\"\n");
    assertThat(faults(BRIDGE + LINE.replace("demo-line", "bad")))
        .containsExactly(
            "profiles/bad.toml:6:1: unknown form \"morse\"; allowed are columns, json, pattern");
  }

  @Test
  void everyFaultOfTheFileIsListedAtOnce() {
    assertThat(
            faults(
                "[bridge]\nname = \"shop 1\"\nqueue = 1\n[[mqtt]]\nname = \"shop\"\n"
                    + "[[serial]]\nname = \"shop\"\nport = \"COM3\"\n"))
        .containsExactly(
            "shop.toml:2:1: \"shop 1\" is no name; write 1 to 64 letters, digits, and . _ -",
            "shop.toml:3:1: queue 1 is out of range; 16 to 100000 is allowed",
            "shop.toml:4:1: mqtt has no \"url\"; write e.g. \"tcp://127.0.0.1:1883\" or"
                + " \"ssl://host:8883\"",
            "shop.toml:6:1: serial has no \"station\"; name the station it is for",
            "shop.toml:6:1: serial has no \"profile\"; name a profile file",
            "shop.toml:7:1: the name \"shop\" is used twice; name it otherwise",
            "shop.toml:8:1: a serial port must be a path like /dev/ttyUSB0, usb-serial:NUMBER, or"
                + " usb:VENDOR:PRODUCT with four hexadecimal digits each; found \"COM3\"; write e.g."
                + " \"/dev/ttyUSB0\", \"usb-serial:A600XYZ\" or \"usb:0403:6001\"");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "open-to-network = true|1:1: http has no \"listen\"; write an address as numbers and a port,"
            + " e.g. \"127.0.0.1:9470\" or \"[::1]:9470\"",
        "listen = \"9470\"|2:1: \"9470\" is no address with a port; write an address as numbers and a"
            + " port, e.g. \"127.0.0.1:9470\" or \"[::1]:9470\"",
        "listen = \"localhost:9470\"|2:1: \"localhost:9470\" is no address with a port; write an"
            + " address as numbers and a port, e.g. \"127.0.0.1:9470\" or \"[::1]:9470\"",
        "listen = \"127.0.0.1:0\"|2:1: port 0 is out of range; write an address as numbers and a"
            + " port, e.g. \"127.0.0.1:9470\" or \"[::1]:9470\"",
        "listen = \"999.0.0.1:80\"|2:1: \"999.0.0.1\" is no address; write an address as numbers and a"
            + " port, e.g. \"127.0.0.1:9470\" or \"[::1]:9470\"",
        "listen = \"0.0.0.0:9470\"|2:1: 0.0.0.0 can be reached from other computers, and nothing asks"
            + " who calls; listen on 127.0.0.1, or add open-to-network = true",
        "listen = \"[::]:9470\"|2:1: :: can be reached from other computers, and nothing asks"
            + " who calls; listen on 127.0.0.1, or add open-to-network = true",
      })
  void figuresAreServedOnThisMachineOnly(String keys, String fault) {
    assertThat(faults("[http]\n" + lines(keys) + BRIDGE + BROKER))
        .containsExactly("shop.toml:" + fault);
  }

  @Test
  void figuresMayBeServedElsewhereWhereThatIsSaid() throws IOException {
    String open = "[http]\nlisten = \"0.0.0.0:9470\"\nopen-to-network = true\n";
    assertThat(directory.read(open + BRIDGE + BROKER).http())
        .contains(new HttpConfig("0.0.0.0", 9470));
    assertThat(directory.read("[http]\nlisten = \"[::1]:1\"\n" + BRIDGE + BROKER).http())
        .contains(new HttpConfig("::1", 1));
    assertThat(directory.read(BRIDGE + BROKER).http()).isEmpty();
  }
}
