using System.Security.Cryptography;
using System.Text;

namespace BoothWatch.Service.Access;

/// <summary>
/// While no secret is set: a code that only the log of the running program shows, good for one sign-in on this machine. Whoever can
/// read the log may change things; another user of the machine, and a page from elsewhere, cannot.
/// </summary>
internal sealed class StartCode
{
    private const string Symbols = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
    private readonly Lock _gate = new();
    private string _current = Make(3);

    /// <summary>The code that holds now, in groups of four.</summary>
    public string Current
    {
        get
        {
            lock (_gate)
            {
                return _current;
            }
        }
    }

    /// <summary>Makes a random word in groups of four of 32 symbols: 20 bits a group.</summary>
    public static string Make(int groups) =>
        string.Join('-', Enumerable.Range(0, groups).Select(_ => RandomNumberGenerator.GetString(Symbols, 4)));

    /// <summary>Takes a code, in whatever case and grouping. A right one is used up and another takes its place.</summary>
    public bool Take(string typed)
    {
        byte[] given = Bytes(typed);
        lock (_gate)
        {
            if (!CryptographicOperations.FixedTimeEquals(given, Bytes(_current)))
            {
                return false;
            }

            _current = Make(3);
            return true;
        }
    }

    private static byte[] Bytes(string code) => Encoding.UTF8.GetBytes([.. code.Where(char.IsAsciiLetterOrDigit).Select(char.ToUpperInvariant)]);
}
