import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { html, joined, nameHtml, trusted, withCode } from "../../src/outputs/html.js";

describe("html", () => {
  test("escapes what is put into it, in text and in attributes", () => {
    const name = `<script>alert("1")</script> & 'x'`;
    expect(html`<p title="${name}">${name}</p>`.markup).toBe(
      '<p title="&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt; &amp; &#39;x&#39;">' +
        "&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt; &amp; &#39;x&#39;</p>",
    );
  });

  test("keeps markup, lists of markup and numbers, and leaves out what is not there", () => {
    const items = ["a", "<b>"].map((x) => html`<i>${x}</i>`);
    expect(html`<b>${items}${undefined}${false}${0}</b>`.markup).toBe(
      "<b><i>a</i><i>&lt;b&gt;</i>0</b>",
    );
  });

  test("takes trusted markup as it stands", () => {
    expect(html`${trusted("<br>")}`.markup).toBe("<br>");
  });

  test("shows what no XML document may hold, and what hides in a text", () => {
    expect(html`${"a\u0000b\u001bc\ud800d\uffffe\u202e"}`.markup).toBe(
      "a\\u0000b\\u001bc\\ud800d\ufffde\\u202e",
    );
    expect(html`${"tab\tline\n👩‍🌾"}`.markup).toBe("tab\tline\n👩‍🌾");
  });

  test("never lets any text open a tag, an entity of its own, or end an attribute", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const { markup } = html`${text}`;
        expect(markup).not.toMatch(/[<>"']/);
        expect(markup.replace(/&(amp|lt|gt|quot|#39);/g, "")).not.toContain("&");
      }),
    );
  });

  test("puts the same between all of a list", () => {
    expect(html`${joined(["a", "b", "c"], html`<i>,</i>`)}`.markup).toBe("a<i>,</i>b<i>,</i>c");
    expect(html`${joined([], ", ")}`.markup).toBe("");
  });
});

test("keeps names that run right to left to themselves", () => {
  expect(nameHtml("פלפל <x>").markup).toBe("<bdi>פלפל &lt;x&gt;</bdi>");
});

describe("what stands in backticks", () => {
  test("is code, wherever prose has it", () => {
    expect(withCode(html`<p>Write ${"`feed: true`, or `a <b>`."}</p>`).markup).toBe(
      "<p>Write <code>feed: true</code>, or <code>a &lt;b&gt;</code>.</p>",
    );
  });

  test("stays as it is in names, drawings, attributes, and where it is no pair", () => {
    const kept = html`${nameHtml("`x`")}<svg><text>\`x\`</text></svg
      ><i title="${"`x`"}">a ${"`"} b</i>`;
    expect(withCode(kept).markup).toBe(kept.markup);
    expect(withCode(html`${"John` and `feed: true`"}`).markup).toBe(
      "John` and <code>feed: true</code>",
    );
  });
});
