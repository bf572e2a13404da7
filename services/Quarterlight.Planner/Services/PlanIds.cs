using System.Globalization;
using System.Security.Cryptography;

namespace Quarterlight.Planner.Services;

/// <summary>Ids of kept plans: the scene's id, the time, and a few letters so that two made at once do not meet.</summary>
internal static class PlanIds
{
    private const string Letters = "abcdefghjkmnpqrstuvwxyz23456789";

    private const int LongestSceneId = 40;

    public static string Next(string sceneName, DateTimeOffset now)
    {
        string scene = sceneName.Split('/')[^1];
        scene = scene[..Math.Min(scene.Length, LongestSceneId)];
        if (!Mapping.FieldReader.IsId(scene))
        {
            scene = "plan"; // a scene sent whole may be called anything
        }

        string moment = now.UtcDateTime.ToString("yyMMdd-HHmmss", CultureInfo.InvariantCulture);
        return $"{scene}-{moment}-{RandomNumberGenerator.GetString(Letters, 4)}";
    }
}
