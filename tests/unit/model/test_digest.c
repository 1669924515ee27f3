/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Question:  is the canonical form the one of the standard, and the digest its hash?
 * Answer:    the examples of RFC 8785 and FIPS 180-4; properties of our own documents.
 * Not here:  reading and writing files (test_reader.c). */
#include "digest.h"

#include "document.h"
#include "strict.h"

#include <math.h>
#include <string.h>

static JsonNode *
parse(const char *text)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func((GDestroyNotify)hs_fault_free);
    JsonNode *root = hs_strict_parse(text, strlen(text), faults);

    g_assert_nonnull(root);
    return root;
}

/* RFC 8785 (2020), appendix B: bits of the number and how it is written. */
static const struct {
    guint64 bits;
    const char *text;
} appendix_b[] = {{0x0000000000000000, "0"},
                  {0x8000000000000000, "0"},
                  {0x0000000000000001, "5e-324"},
                  {0x8000000000000001, "-5e-324"},
                  {0x7fefffffffffffff, "1.7976931348623157e+308"},
                  {0xffefffffffffffff, "-1.7976931348623157e+308"},
                  {0x4340000000000000, "9007199254740992"},
                  {0xc340000000000000, "-9007199254740992"},
                  {0x4430000000000000, "295147905179352830000"},
                  {0x44b52d02c7e14af5, "9.999999999999997e+22"},
                  {0x44b52d02c7e14af6, "1e+23"},
                  {0x44b52d02c7e14af7, "1.0000000000000001e+23"},
                  {0x444b1ae4d6e2ef4e, "999999999999999700000"},
                  {0x444b1ae4d6e2ef4f, "999999999999999900000"},
                  {0x444b1ae4d6e2ef50, "1e+21"},
                  {0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7"},
                  {0x3eb0c6f7a0b5ed8d, "0.000001"},
                  {0x41b3de4355555553, "333333333.3333332"},
                  {0x41b3de4355555554, "333333333.33333325"},
                  {0x41b3de4355555555, "333333333.3333333"},
                  {0x41b3de4355555556, "333333333.3333334"},
                  {0x41b3de4355555557, "333333333.33333343"},
                  {0xbecbf647612f3696, "-0.0000033333333333333333"},
                  {0x43143ff3c1cb0959, "1424953923781206.2"}};

static double
from_bits(guint64 bits)
{
    double value;

    memcpy(&value, &bits, sizeof value);
    return value;
}

static void
digest__writes_the_numbers_of_appendix_b(void)
{
    for (guint i = 0; i < G_N_ELEMENTS(appendix_b); i++) {
        g_autofree char *text = hs_canonical_number(from_bits(appendix_b[i].bits));

        g_assert_cmpstr(text, ==, appendix_b[i].text);
    }
}

/* Beside a power of two the gaps on both sides differ: the nearest decimal of 16 digits may not read back, its neighbour
 * does. 2^-44 is 5.684341886080801486...e-14; ECMA-262, Number::toString, wants the 16 digits that read back. */
static void
digest__takes_the_shortest_beside_a_power_of_two(void)
{
    g_autofree char *text = hs_canonical_number(ldexp(1.0, -44));

    g_assert_cmpstr(text, ==, "5.684341886080802e-14");
    for (int exponent = -1074; exponent < 1024; exponent++) {
        g_autofree char *power = hs_canonical_number(ldexp(1.0, exponent));

        g_assert_cmpfloat(g_ascii_strtod(power, NULL), ==, ldexp(1.0, exponent));
    }
}

static void
digest__writes_numbers_that_read_back(void)
{
    GRand *random = g_rand_new_with_seed(8785);

    for (int i = 0; i < 20000; i++) {
        guint64 bits = (guint64)g_rand_int(random) << 32 | g_rand_int(random);
        double value = from_bits(bits);
        g_autofree char *text = NULL;

        if (!isfinite(value))
            continue;
        text = hs_canonical_number(value);
        if (g_ascii_strtod(text, NULL) != value)
            g_error("%.17g became %s", value, text);
    }
    g_rand_free(random);
}

/* RFC 8785, section 3.2.2: the example object; section 3.2.3: its keys sorted. */
static void
digest__writes_the_example_of_section_3_2(void)
{
    g_autoptr(JsonNode) root = parse(
        "{\"numbers\": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],"
        "\"string\": \"\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\\"\\/\","
        "\"literals\": [null, true, false]}");
    g_autofree char *text = hs_canonical_text(root, NULL);

    g_assert_cmpstr(
        text, ==,
        "{\"literals\":[null,true,false],\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],"
        "\"string\":\"\xE2\x82\xAC$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}");
}

/* RFC 8785, section 3.2.3: the order is that of UTF-16 code units, not of code points. */
static void
digest__sorts_keys_by_utf16(void)
{
    g_autoptr(JsonNode) root = parse(
        "{\"\\u20ac\":\"Euro Sign\",\"\\r\":\"Carriage Return\",\"\\ufb33\":\"Hebrew Letter "
        "Dalet With Dagesh\","
        "\"1\":\"One\",\"\\ud83d\\ude00\":\"Emoji: Grinning Face\",\"\\u0080\":\"Control\","
        "\"\\u00f6\":\"Latin Small Letter O With Diaeresis\"}");
    static const char *const order[] = {"Carriage Return",
                                        "One",
                                        "Control",
                                        "Latin Small Letter O With Diaeresis",
                                        "Euro Sign",
                                        "Emoji: Grinning Face",
                                        "Hebrew Letter Dalet With Dagesh"};
    g_autofree char *text = hs_canonical_text(root, NULL);
    const char *at = text;

    for (guint i = 0; i < G_N_ELEMENTS(order); i++) {
        at = strstr(at, order[i]);
        if (at == NULL)
            g_error("%s is out of order in %s", order[i], text);
    }
}

/* NIST, FIPS 180-4 (2015), SHA-256; the example values for one block "abc" and for the empty text. */
static void
digest__is_sha_256(void)
{
    g_autofree char *abc = g_compute_checksum_for_string(G_CHECKSUM_SHA256, "abc", -1);
    g_autofree char *none = g_compute_checksum_for_string(G_CHECKSUM_SHA256, "", -1);
    g_autoptr(JsonNode) root =
        parse("{ \"b\" : 1.0, \"a\" : [], \"signatures\" : [ { \"name\" : \"x\" } ] }");
    g_autofree char *digest = hs_digest_of(root);
    g_autofree char *wanted =
        g_compute_checksum_for_string(G_CHECKSUM_SHA256, "{\"a\":[],\"b\":1}", -1);

    g_assert_cmpstr(abc, ==,
                    "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    g_assert_cmpstr(none, ==,
                    "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    g_assert_cmpstr(digest, ==, wanted);
}

static void
digest__leaves_out_only_the_top_signatures(void)
{
    g_autoptr(JsonNode) plain = parse("{\"a\":{\"signatures\":[1]}}"),
                        none = parse("{\"a\":{}}");
    g_autoptr(JsonNode) signed_too =
        parse("{\"signatures\":[{\"name\":\"N\"}],\"a\":{\"signatures\":[1]}}");
    g_autofree char *a = hs_digest_of(plain), *b = hs_digest_of(none),
                    *c = hs_digest_of(signed_too);

    g_assert_cmpstr(a, !=, b);
    g_assert_cmpstr(a, ==, c);
}

static void
digest__does_not_see_order_space_or_spelling(void)
{
    g_autoptr(JsonNode) one = parse("{\"x\":1.50,\"y\":\"\\u00e9\"}"),
                        two = parse("{\n \"y\" : \"\xC3\xA9\", \"x\" : 15e-1 }");
    g_autoptr(JsonNode) other = parse("{\"x\":1.5000000000000002,\"y\":\"\xC3\xA9\"}");
    g_autofree char *a = hs_digest_of(one), *b = hs_digest_of(two), *c = hs_digest_of(other);

    g_assert_cmpstr(a, ==, b);
    g_assert_cmpstr(a, !=, c);
}

int
main(int argc, char **argv)
{
    g_test_init(&argc, &argv, NULL);
    g_test_add_func("/digest/writes_the_numbers_of_appendix_b",
                    digest__writes_the_numbers_of_appendix_b);
    g_test_add_func("/digest/takes_the_shortest_beside_a_power_of_two",
                    digest__takes_the_shortest_beside_a_power_of_two);
    g_test_add_func("/digest/writes_numbers_that_read_back",
                    digest__writes_numbers_that_read_back);
    g_test_add_func("/digest/writes_the_example_of_section_3_2",
                    digest__writes_the_example_of_section_3_2);
    g_test_add_func("/digest/sorts_keys_by_utf16", digest__sorts_keys_by_utf16);
    g_test_add_func("/digest/is_sha_256", digest__is_sha_256);
    g_test_add_func("/digest/leaves_out_only_the_top_signatures",
                    digest__leaves_out_only_the_top_signatures);
    g_test_add_func("/digest/does_not_see_order_space_or_spelling",
                    digest__does_not_see_order_space_or_spelling);
    return g_test_run();
}
