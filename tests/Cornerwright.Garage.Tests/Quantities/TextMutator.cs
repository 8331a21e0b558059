using System.Text;

namespace Cornerwright.Garage.Tests.Quantities;

/// <summary>Bends valid text: characters dropped, doubled, swapped, replaced, pieces of other texts spliced in. Seeded.</summary>
internal sealed class TextMutator(int seed, string[] corpus)
{
    private const string Alphabet =
        "0123456789.,'\"°/-+x× \u00A0\u2212½¼⅛±%eEjJxXRrZVY()N·mMkginftlbsµ²^*H\0\t\uD83D\uFFFD";

    private readonly Random _random = new(seed);

    public int Next(int below) => _random.Next(below);

    public string Make()
    {
        var text = new StringBuilder(corpus[_random.Next(corpus.Length)]);
        int changes = _random.Next(0, 5);
        for (int i = 0; i < changes; i++)
        {
            Change(text);
        }

        return text.ToString();
    }

    private void Change(StringBuilder text)
    {
        int at = _random.Next(text.Length + 1);
        switch (_random.Next(8))
        {
            case 0 when at < text.Length:
                text.Remove(at, 1);
                break;
            case 1 when at < text.Length:
                text.Insert(at, text[at]);
                break;
            case 2 when at < text.Length:
                text[at] = Alphabet[_random.Next(Alphabet.Length)];
                break;
            case 3:
                text.Insert(at, Alphabet[_random.Next(Alphabet.Length)]);
                break;
            case 4 when at + 1 < text.Length:
                (text[at], text[at + 1]) = (text[at + 1], text[at]);
                break;
            case 5:
                string other = corpus[_random.Next(corpus.Length)];
                int from = _random.Next(other.Length);
                text.Insert(at, other.AsSpan(from, _random.Next(other.Length - from + 1)));
                break;
            case 6 when at < text.Length:
                text.Length = at;
                break;
            default:
                text.Insert(at, (char)_random.Next(0x20, _random.Next(4) == 0 ? 0xFFFF : 0x7F));
                break;
        }
    }
}
