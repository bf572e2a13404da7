using Quarterlight.Placement;

namespace Quarterlight.Drawing;

/// <summary>Numbers talkers in the order of the scene, from 1, the same in picture, legend and text.</summary>
internal static class TalkerNumbers
{
    public static int Of(Scene scene, string talkerId)
    {
        for (int i = 0; i < scene.Talkers.Count; i++)
        {
            if (scene.Talkers[i].Id == talkerId)
            {
                return i + 1;
            }
        }

        throw new ArgumentException($"The scene has no talker {talkerId}.", nameof(talkerId));
    }
}
