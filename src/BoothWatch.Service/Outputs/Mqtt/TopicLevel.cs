using System.Security.Cryptography;
using System.Text;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>One level of a topic after the Homie convention: a to z, 0 to 9 and hyphens.</summary>
public static class TopicLevel
{
    /// <summary>Most characters of a level.</summary>
    public const int Longest = 80;

    /// <summary>True for a character that a level may have.</summary>
    public static bool Allows(char character) => character is (>= 'a' and <= 'z') or (>= '0' and <= '9') or '-';

    /// <summary>The level for a name that people gave: <c>Harbour Lane</c> becomes <c>harbour-lane</c>. A name without any such character becomes a code of its own.</summary>
    public static string Of(string name)
    {
        var level = new StringBuilder();
        foreach (char character in name.ToLowerInvariant())
        {
            if (Allows(character) && character != '-')
            {
                level.Append(character);
            }
            else if (level.Length > 0 && level[^1] != '-')
            {
                level.Append('-');
            }
        }

        string clean = level.ToString().TrimEnd('-');
        return clean.Length > 0 ? clean : "n" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(name)))[..8];
    }
}
