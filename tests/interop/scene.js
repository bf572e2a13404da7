// A scene of our own invention: a driving lesson with somebody in the back who comments.
'use strict';

const cabin = {
  display_name: 'Lesson saloon',
  body_style: 'BODY_STYLE_SALOON',
  drive_side: 'DRIVE_SIDE_LEFT',
  engine_layout: 'ENGINE_LAYOUT_FRONT',
};

const small = ['FIXING_SPRING_CLIP', 'FIXING_PAPER_TAPE', 'FIXING_ELASTIC_TIE'];
const kit = {
  display_name: 'Small bag',
  microphones: [
    microphone('lav', 'small omni lavalier', 'POLAR_PATTERN_OMNI', 0.012, 26, [...small, 'FIXING_BODY_MOUNT'], 3),
    microphone('mini', 'miniature cardioid', 'POLAR_PATTERN_CARDIOID', 0.02, 24, small, 2),
    microphone('short', 'short supercardioid', 'POLAR_PATTERN_SUPERCARDIOID', 0.08, 14, ['FIXING_SPRING_CLIP', 'FIXING_ARTICULATED_ARM'], 2),
  ],
  fixings: ['FIXING_SPRING_CLIP', 'FIXING_PAPER_TAPE', 'FIXING_ELASTIC_TIE', 'FIXING_ARTICULATED_ARM', 'FIXING_BODY_MOUNT'].map((fixing) => ({ fixing, count: 4 })),
  recorder_input_count: 4,
};

const scene = {
  display_name: 'The lesson goes on',
  cabin: 'cabins/lesson-saloon',
  kit: 'kits/small-bag',
  talkers: [
    talker('learner', 'Learner', 'driver', 'VOCAL_EFFORT_RAISED', [[0, 0.7], [-50, 0.3]]),
    talker('teacher', 'Teacher', 'front-passenger', 'VOCAL_EFFORT_NORMAL', [[0, 0.4], [60, 0.6]]),
    talker('cousin', 'Cousin', 'rear-right', 'VOCAL_EFFORT_NORMAL', [[0, 0.8], [30, 0.2]]),
  ],
  shots: [
    {
      id: 'A',
      position: { x_m: 1.9, y_m: 0.1, z_m: 1.25 },
      aim_point: { x_m: -0.2, y_m: 0.3, z_m: 1.15 },
      focal_length_mm: 50,
      sensor_width_mm: 24.9,
      sensor_height_mm: 14,
    },
  ],
  drive_conditions: { speed_km_per_hour: 40, road_surface: 'ROAD_SURFACE_SMOOTH_ASPHALT', engine_state: 'ENGINE_STATE_RUNNING' },
};

function microphone(id, displayName, pattern, lengthM, selfNoiseDba, fixings, count) {
  return {
    id,
    display_name: displayName,
    pattern,
    body_length_m: lengthM,
    body_diameter_m: 0.012,
    sensitivity_mv_per_pa: 15,
    self_noise_dba: selfNoiseDba,
    max_level_db: 132,
    fixings,
    count,
  };
}

function talker(id, displayName, seatId, effort, poses) {
  return {
    id,
    display_name: displayName,
    seat_id: seatId,
    vocal_effort: effort,
    head_poses: poses.map(([yaw, share]) => ({ yaw_deg: yaw, share_fraction: share })),
  };
}

module.exports = { cabin, kit, scene };
